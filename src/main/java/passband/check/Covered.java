package passband.check;

import java.util.ArrayList;
import java.util.List;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Named;
import passband.plan.Plan;
import passband.source.Span;
import passband.syntax.Word;

/**
 * {@code mode-untested}, {@code outlet-untested} and {@code setting-untested}: what of the device
 * the procedure leaves out. Said once a procedure, where it names the device.
 */
final class Covered implements Check {
  @Override
  public boolean needsWhole() {
    return true;
  }

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    Word device = plan.tree().device();
    Span where = device == null ? plan.name().span() : device.span();
    List<String> modes = new ArrayList<>();
    List<String> settings = new ArrayList<>();
    for (Coverage.Cell cell : Coverage.cells(plan)) {
      String name = cell.mode().name().text() + " on " + cell.outlet().name().text();
      if (!cell.tested()) {
        modes.add(name);
      } else if (!cell.missing().isEmpty()) {
        settings.add(name + " (" + String.join(", ", cell.missing()) + ")");
      }
    }
    List<String> outlets = Named.names(Coverage.untouched(plan));
    say(Code.MODE_UNTESTED, where, "no test covers %s", modes, diagnostics);
    String outletFormat =
        outlets.size() == 1 ? "no test uses the outlet %s" : "no test uses the outlets %s";
    say(Code.OUTLET_UNTESTED, where, outletFormat, outlets, diagnostics);
    say(Code.SETTING_UNTESTED, where, "not tested over the whole range: %s", settings, diagnostics);
  }

  private static void say(
      Code code, Span where, String format, List<String> found, Diagnostics diagnostics) {
    if (!found.isEmpty()) {
      diagnostics
          .say(code, where, format, Figures.list(found))
          .hint("'passband check --coverage' prints what is tested");
    }
  }
}
