package passband.command;

import java.io.PrintStream;
import java.util.Objects;
import passband.diagnostic.Code;
import passband.diagnostic.Explanations;

/**
 * {@code passband explain}: a code's page of the manual, the list of codes, or the bench that the
 * examples use.
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
      return ExitStatus.FINE;
    }
    for (String name : arguments.operands()) {
      out.print(
          name.equals("bench")
              ? Explanations.bench()
              : Explanations.page(Objects.requireNonNull(Code.find(name))));
    }
    return ExitStatus.FINE;
  }
}
