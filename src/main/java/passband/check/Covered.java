package passband.check;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.model.Device.Outlet;
import passband.model.ExtraSetting;
import passband.model.Named;
import passband.plan.Plan;
import passband.plan.Point;
import passband.source.Span;
import passband.syntax.SettingOption;
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
    List<Span> modeLines = new ArrayList<>();
    List<Span> settingLines = new ArrayList<>();
    for (Coverage.Cell cell : Coverage.cells(plan)) {
      String name = cell.mode().name().text() + " on " + cell.outlet().name().text();
      if (!cell.tested()) {
        modes.add(name);
        modeLines.add(cell.mode().name().span());
      } else if (!cell.missing().isEmpty()) {
        settings.add(name + " (" + String.join(", ", cell.missing()) + ")");
        settingLines.add(ModeLines.setting(cell.mode()));
        nearest(plan, cell, settingLines);
      }
    }
    List<Outlet> untouched = Coverage.untouched(plan);
    List<String> outlets = Named.names(untouched);
    List<Span> outletLines = new ArrayList<>();
    untouched.forEach(outlet -> outletLines.add(outlet.name().span()));
    say(Code.MODE_UNTESTED, where, "no test covers %s", modes, modeLines, diagnostics);
    String outletFormat =
        outlets.size() == 1 ? "no test uses the outlet %s" : "no test uses the outlets %s";
    say(Code.OUTLET_UNTESTED, where, outletFormat, outlets, outletLines, diagnostics);
    options(plan, diagnostics);
    say(
        Code.SETTING_UNTESTED,
        where,
        "not tested over the whole range: %s",
        settings,
        settingLines,
        diagnostics);
  }

  /**
   * Of a setting of the generator that some test sets, every option is tested: set by a row, or the
   * rest position where a row without the setting has the mode and a quantity of one that sets it.
   */
  private static void options(Plan plan, Diagnostics diagnostics) {
    for (ExtraSetting setting : plan.device().settings()) {
      Set<String> set = new HashSet<>();
      Point first = null;
      for (Point point : plan.points()) {
        String value = point.extras().get(setting.name().text());
        if (value != null && set.add(value)) {
          first = first == null ? point : first;
        }
      }
      if (setting.leave() != null && atRest(plan, setting.name().text())) {
        set.add(setting.leave().text());
      }
      for (SettingOption option :
          setting.options() == null ? List.<SettingOption>of() : setting.options()) {
        if (first != null && !set.contains(option.printed().text())) {
          diagnostics
              .say(
                  Code.SETTING_UNTESTED,
                  first.span(),
                  "no test has '%s' at '%s'",
                  setting.name().text(),
                  option.name().text())
              .note(option.name().span(), "the option is here");
        }
      }
    }
  }

  private static boolean atRest(Plan plan, String setting) {
    for (Point with : plan.points()) {
      for (Point without : plan.points()) {
        if (with.extras().containsKey(setting)
            && !without.extras().containsKey(setting)
            && with.mode() == without.mode()
            && readAlike(with, without)) {
          return true;
        }
      }
    }
    return false;
  }

  private static boolean readAlike(Point one, Point other) {
    for (Limit limit : one.limits()) {
      for (Limit same : other.limits()) {
        if (limit.quantity().equals(same.quantity())) {
          return true;
        }
      }
    }
    return false;
  }

  /** A row that tests the mode: the one that is missing belongs beside it. */
  private static void nearest(Plan plan, Coverage.Cell cell, List<Span> lines) {
    for (Point point : plan.points()) {
      if (point.mode() == cell.mode() && point.outlet() == cell.outlet()) {
        lines.add(point.span());
        return;
      }
    }
  }

  private static void say(
      Code code,
      Span where,
      String format,
      List<String> found,
      List<Span> lines,
      Diagnostics diagnostics) {
    if (!found.isEmpty()) {
      DiagnosticBuilder said = diagnostics.say(code, where, format, Figures.list(found));
      for (Span line : new LinkedHashSet<>(lines)) {
        said.note(line, "it is about this");
      }
      said.hint("'passband check --coverage' prints what is tested");
    }
  }
}
