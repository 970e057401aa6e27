package passband.check;

import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.model.Device.Mode;
import passband.plan.Plan;
import passband.plan.Point;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.quantity.Wave;
import passband.syntax.Tree;

/**
 * {@code crest-below-one}, an error: a mode whose highest peak voltage is below the RMS voltage
 * that its highest setting means in its lowest rated load, U = √(P·R); and a point that accepts
 * only peaks below every RMS value that it accepts of the same {@link Wave}.
 */
final class PeakBelowRms implements Check {
  private static final Unit VOLT = Units.of("V");

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Mode mode : plan.device().modes()) {
      look(plan, mode, diagnostics);
    }
    for (Point point : plan.points()) {
      for (Wave wave : Wave.values()) {
        look(Figures.limit(point, wave.peak()), Figures.limit(point, wave.rms()), diagnostics);
      }
    }
  }

  private static void look(@Nullable Limit peak, @Nullable Limit rms, Diagnostics diagnostics) {
    Real highest = peak == null ? null : peak.exact().upper();
    Real lowest = rms == null ? null : rms.exact().lower();
    if (peak != null && rms != null && highest != null && lowest != null) {
      if (highest.compareTo(lowest) < 0) {
        diagnostics
            .say(
                Code.CREST_BELOW_ONE,
                peak.rule().span(),
                "a %s of at most %s is below the least %s that is accepted, %s",
                peak.quantity(),
                Figures.text(highest, peak.unit()),
                rms.quantity(),
                Figures.text(lowest, rms.unit()))
            .note(rms.rule().span(), "the RMS value is accepted here");
      }
    }
  }

  /**
   * The RMS voltage at the highest setting in the lowest rated load, in V; null for a mode that is
   * not set and judged as a power.
   */
  static @Nullable Real rated(Mode mode) {
    QuantityKind kind = mode.settingKind();
    Tree.QuantityLimit output = mode.output();
    boolean power =
        kind != null
            && kind.name().equals("power")
            && output != null
            && output.quantity().text().equals("power");
    if (!power || mode.setting() == null || mode.loads() == null) {
      return null;
    }
    Rational square = mode.setting().highest().times(mode.loads().lowest());
    return Real.of(square).sqrt();
  }

  /** Whether a mode's highest peak, in V, is below that. */
  static boolean isBelow(Mode mode, Real peak) {
    Real rms = rated(mode);
    return rms != null && peak.compareTo(rms) < 0;
  }

  private static void look(Plan plan, Mode mode, Diagnostics diagnostics) {
    Real peak = PeakVoltage.of(plan.device(), mode);
    Real rms = rated(mode);
    if (peak == null || rms == null || peak.compareTo(rms) >= 0) {
      return;
    }
    diagnostics
        .say(
            Code.CREST_BELOW_ONE,
            ModeLines.limit(mode, Wave.VOLTAGE.peak()),
            "a peak of %s is below the RMS voltage of the output, %s",
            Figures.text(peak, VOLT),
            Figures.text(rms, VOLT))
        .note(ModeLines.setting(mode), "at the highest setting")
        .note(ModeLines.loads(mode), "in the lowest rated load");
  }
}
