package passband.command;

import java.io.PrintStream;
import passband.diagnostic.Code;
import passband.diagnostic.Explanations;
import passband.judge.Cause;
import passband.judge.CauseManual;

/**
 * {@code passband explain}: the manual's page of a diagnostic's code or of a cause's, the list of
 * codes, or the bench that the examples use.
 */
final class ExplainCommand implements Verb {
  private final PrintStream out;

  ExplainCommand(PrintStream out) {
    this.out = out;
  }

  @Override
  public int run(Arguments arguments) {
    if (arguments.operands().isEmpty()) {
      for (Code code : Code.values()) {
        out.println(code.id() + ": " + code.weight() + ": " + code.title());
      }
      for (Cause.Code code : Cause.Code.values()) {
        out.println(code.word() + ": " + CauseManual.entry(code).effect() + ": " + code.pattern());
      }
    }
    arguments.operands().forEach(name -> out.print(page(name)));
    return ExitStatus.FINE;
  }

  /** A code may be that of a diagnostic and of a cause; then both are explained. */
  private static String page(String name) {
    if (name.equals("bench")) {
      return Explanations.bench();
    }
    Code code = Code.find(name);
    Cause.Code cause = Cause.Code.find(name);
    return (code == null ? "" : Explanations.page(code))
        + (code == null || cause == null ? "" : "\n")
        + (cause == null ? "" : CauseManual.page(cause));
  }
}
