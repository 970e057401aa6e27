package passband.edit;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.quantity.Table;

/**
 * What is said of a kind of line, in the editor and in the reference.
 *
 * @param block the word of the block that it stands in: {@code file} at the top, {@code steps} for
 *     all lists of steps
 * @param word the word that leads it
 * @param form how it is written
 * @param purpose what it is for, in a sentence
 */
public record LanguageLine(String block, String word, String form, String purpose) {
  private static final List<LanguageLine> ALL =
      Table.read(LanguageLine.class, "lines.tsv").stream()
          .map(row -> new LanguageLine(row[0], row[1], row[2], row[3]))
          .toList();

  /** All of them, in the order of the reference. */
  public static List<LanguageLine> all() {
    return ALL;
  }

  /**
   * The line that a word leads in a block; null where there is none.
   *
   * @param head the word on the block's own line; empty at the top of a file
   */
  public static @Nullable LanguageLine find(String head, String word) {
    String block =
        switch (head) {
          case "" -> "file";
          case "section" -> word.equals("when") ? "section" : "steps";
          case "part" -> word.equals("allow") ? "part" : "procedure";
          case "adjust", "before", "each", "after" -> "steps";
          default -> head;
        };
    return ALL.stream()
        .filter(line -> line.block.equals(block) && line.word.equals(word))
        .findFirst()
        .orElse(null);
  }
}
