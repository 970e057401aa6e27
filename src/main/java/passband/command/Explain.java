package passband.command;

import java.io.PrintStream;
import java.util.List;
import java.util.Set;
import passband.diagnostic.Code;
import passband.diagnostic.Manual;
import passband.diagnostic.Spelling;

/**
 * {@code passband explain}: a code's page of the manual, the list of codes, or the bench that the
 * examples use.
 */
final class Explain {
  private final PrintStream out;

  Explain(PrintStream out) {
    this.out = out;
  }

  int run(List<String> words) throws Usage {
    Arguments arguments = Arguments.of(words, Set.of(), Set.of());
    if (arguments.paths().isEmpty()) {
      for (Code code : Code.values()) {
        out.println(code.id() + ": " + code.severity().word() + ": " + code.title());
      }
      return Main.FINE;
    }
    for (String name : arguments.paths()) {
      out.print(name.equals("bench") ? Manual.bench() : Manual.page(code(name)));
    }
    return Main.FINE;
  }

  private static Code code(String name) throws Usage {
    Code code = Code.find(name);
    if (code != null) {
      return code;
    }
    String near = Spelling.nearest(name, Code.ids());
    throw new Usage(
        "there is no code '"
            + name
            + "'"
            + (near == null
                ? "; 'passband explain' lists them"
                : "; did you mean '" + near + "'?"));
  }
}
