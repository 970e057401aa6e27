package passband.command;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a command takes and what help says of it.
 *
 * @param summary a few words
 * @param details a paragraph of lines
 * @param options without {@code --help}, which every command has
 * @param listed whether a person calls it; what only other programs call is in no list
 */
record CommandSpec(
    String name,
    List<Operand> operands,
    String summary,
    String details,
    List<Option> options,
    boolean listed) {

  /**
   * Of a command that prints a report or a record. A shell's own redirection is not for everybody:
   * PowerShell writes other bytes than it is given.
   */
  static final Option TO_FILE =
      Option.of(
              "--out",
              ArgumentKind.FILE,
              "FILE",
              "write into FILE what would be printed; an older one is replaced")
          .or("-o");

  static final Option HELP = Option.flag("--help", "print this help").or("-h");

  /** Every option that it takes. */
  List<Option> allOptions() {
    List<Option> all = new ArrayList<>(options);
    all.add(HELP);
    return all;
  }

  /** The option of this name or letter; null for none. */
  @Nullable Option option(String written) {
    for (Option option : allOptions()) {
      if (written.equals(option.name()) || written.equals(option.letter())) {
        return option;
      }
    }
    return null;
  }

  /** The operand at a place, counted from 0; null where there is none. */
  @Nullable Operand operand(int place) {
    if (place < operands.size()) {
      return operands.get(place);
    }
    Operand last = operands.isEmpty() ? null : operands.get(operands.size() - 1);
    return last != null && last.repeated() ? last : null;
  }

  /** Its name and operands. */
  String synopsis() {
    StringBuilder synopsis = new StringBuilder(name);
    operands.forEach(operand -> synopsis.append(' ').append(operand.synopsis()));
    return synopsis.toString();
  }
}
