package passband.command;

import java.io.PrintStream;
import java.util.List;
import java.util.Set;
import passband.diagnostic.Code;
import passband.diagnostic.Explanations;
import passband.diagnostic.Spelling;
import passband.library.UsageException;

/**
 * {@code passband explain}: a code's page of the manual, the list of codes, or the bench that the
 * examples use.
 */
final class ExplainCommand {
  private final PrintStream out;

  ExplainCommand(PrintStream out) {
    this.out = out;
  }

  int run(List<String> words) throws UsageException {
    Arguments arguments = Arguments.of(words, Set.of(), Set.of());
    if (arguments.paths().isEmpty()) {
      for (Code code : Code.values()) {
        out.println(code.id() + ": " + code.severity().word() + ": " + code.title());
      }
      return Main.FINE;
    }
    for (String name : arguments.paths()) {
      out.print(name.equals("bench") ? Explanations.bench() : Explanations.page(code(name)));
    }
    return Main.FINE;
  }

  private static Code code(String name) throws UsageException {
    Code code = Code.find(name);
    if (code != null) {
      return code;
    }
    String near = Spelling.nearest(name, Code.ids());
    throw new UsageException(
        "there is no code '"
            + name
            + "'"
            + (near == null
                ? "; 'passband explain' lists them"
                : "; did you mean '" + near + "'?"));
  }
}
