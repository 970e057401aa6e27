package passband.check;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.model.Device;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.Terminal;
import passband.plan.Nets;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.plan.Wire;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.syntax.Ratings;

/**
 * {@code lead-underrated} and {@code lead-unrated}: a lead in an output circuit that is rated below
 * the highest peak voltage of a mode tested through it, or that has no rating. A lead on a contact
 * that floats on a pole has the voltage of that pole whenever it delivers.
 */
final class LeadRating implements Check {
  private static final Unit VOLT = Units.of("V");

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      if (run.setup() != null) {
        check(plan.device(), run.delivered(), run.setup(), diagnostics);
      }
    }
  }

  private static void check(
      Device device, List<Point> points, Setup setup, Diagnostics diagnostics) {
    Map<Mode, Real> peaks = new LinkedHashMap<>();
    List<Terminal> live = new ArrayList<>();
    for (Point point : points) {
      if (point.mode() != null && !peaks.containsKey(point.mode())) {
        peaks.put(point.mode(), PeakVoltage.of(device, point.mode()));
        live.addAll(delivering(point.mode(), point.outlet()));
      }
    }
    Nets nets = setup.nets();
    for (Wire wire : peaks.isEmpty() ? List.<Wire>of() : setup.wires()) {
      boolean carries = wire.from().kind().carriesOutput() && wire.to().kind().carriesOutput();
      Terminal contact = carries ? null : floating(device, nets, wire, live);
      if (carries || contact != null) {
        look(wire, contact, peaks, diagnostics);
      }
    }
  }

  /** The poles that a mode puts its voltage between. */
  private static List<Terminal> delivering(Mode mode, @Nullable Outlet outlet) {
    List<Terminal> poles = new ArrayList<>();
    if (outlet != null && mode.isOn(outlet)) {
      poles.addAll(outlet.poles());
      if (mode.through() != null) {
        poles.addAll(mode.through().poles());
      }
    }
    return poles;
  }

  /** The contact joined to a wire that floats on a live pole; null where there is none. */
  private static @Nullable Terminal floating(
      Device device, Nets nets, Wire wire, List<Terminal> live) {
    for (Outlet outlet : device.outlets()) {
      for (Terminal contact : outlet.terminals()) {
        String pole = contact.floatsOn();
        boolean on = nets.joined(contact, wire.from()) || nets.joined(contact, wire.to());
        if (pole != null && on && nets.reaches(live, pole)) {
          return contact;
        }
      }
    }
    return null;
  }

  private static void look(
      Wire wire, @Nullable Terminal contact, Map<Mode, Real> peaks, Diagnostics diagnostics) {
    Rational volts = wire.lead().rated();
    if (volts == null) {
      sayUnrated(wire, contact, diagnostics);
      return;
    }
    peaks.forEach(
        (mode, peak) -> {
          if (peak != null && peak.compareTo(Real.of(volts)) > 0) {
            sayUnderrated(wire, contact, mode, peak, diagnostics);
          }
        });
  }

  private static void sayUnrated(Wire wire, @Nullable Terminal contact, Diagnostics diagnostics) {
    Ratings.Unknown unknown = wire.lead().unknown();
    DiagnosticBuilder said =
        diagnostics.say(
            Code.LEAD_UNRATED,
            wire.span(),
            contact == null
                ? "the %s is in an output circuit but %s"
                : "the %s is on a contact that floats on the output but %s",
            wire.lead().title(),
            unknown == null ? "has no voltage rating" : "its voltage rating is unknown");
    said.note(wire.lead().name().span(), "it is declared here");
    note(contact, said);
    said.hint(
        unknown == null
            ? "add ', rated …' with its rated peak voltage"
            : "use a lead whose rating is known");
  }

  private static void sayUnderrated(
      Wire wire, @Nullable Terminal contact, Mode mode, Real peak, Diagnostics diagnostics) {
    DiagnosticBuilder said =
        diagnostics.say(
            Code.LEAD_UNDERRATED,
            wire.span(),
            contact == null
                ? "the %s is rated %s, but '%s' reaches %s peak"
                : "the %s is rated %s, but is on a contact that floats on the output, where '%s'"
                    + " reaches %s peak",
            wire.lead().title(),
            Objects.requireNonNull(wire.lead().ratedText(), "a lead with a rating"),
            mode.name().text(),
            Figures.text(peak, VOLT));
    said.note(wire.lead().name().span(), "the lead is declared here");
    note(contact, said);
    said.note(ModeLines.limit(mode, "peak-voltage"), "the mode's peak voltage is here");
  }

  private static void note(@Nullable Terminal contact, DiagnosticBuilder said) {
    if (contact != null && contact.floatsOn() != null) {
      said.note(
          contact.name().span(),
          "the contact %s floats on the pole %s",
          contact.id(),
          contact.floatsOn());
    }
  }
}
