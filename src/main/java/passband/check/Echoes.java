package passband.check;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.source.Span;

/**
 * Silences what is said of the same row, or of the same setup, because of the same wrong value: the
 * error nearest to the cause is left, and once it is put right the others are looked for again.
 */
public final class Echoes {
  /** The nearest to the cause first; all are errors, so that nothing is built meanwhile. */
  private static final Code[] ROOTS = {
    Code.SETTING_OFF_SPAN,
    Code.LOAD_NOT_AVAILABLE,
    Code.CIRCUIT_OPEN,
    Code.CIRCUIT_SHORTED,
    Code.RETURN_MISSING,
    Code.POLE_EARTHED,
    Code.OUT_OF_RANGE,
    Code.STATED_LOOSER,
    Code.PREFIX_SLIP,
    Code.NOMINAL_OUTSIDE_LIMITS,
    Code.LIMIT_BELOW_STEP,
    Code.NOTHING_ACCEPTED,
    Code.TOO_COARSE
  };

  private static final Set<Code> ECHOES =
      EnumSet.of(
          Code.LEAKAGE_NOT_TO_EARTH,
          Code.POLE_EARTHED,
          Code.POLE_UNWIRED,
          Code.EARTH_UNSAID,
          Code.TERMINAL_CROWDED,
          Code.MISSING_ITEM,
          Code.OUT_OF_RANGE,
          Code.EMPTY_LIMITS,
          Code.LOAD_OVERPOWERED,
          Code.STATED_LOOSER,
          Code.NOMINAL_OUTSIDE_LIMITS,
          Code.PREFIX_SLIP,
          Code.STATED_TIGHTER,
          Code.LIMIT_BELOW_ZERO,
          Code.LIMIT_BELOW_STEP,
          Code.LIMITS_FALL,
          Code.LIMITS_COPIED,
          Code.LIMITS_OUT_OF_FAMILY,
          Code.NOTHING_ACCEPTED,
          Code.ONE_POINT_LIMITS,
          Code.TOO_COARSE,
          Code.ACCURACY_RATIO_LOW);

  private record Row(String path, int line) {
    static Row of(Span span) {
      return new Row(span.file().path(), span.line());
    }
  }

  private Echoes() {}

  /** Takes the echoes out. */
  public static void silence(Diagnostics diagnostics) {
    Map<Code, Set<Row>> rows = new EnumMap<>(Code.class);
    diagnostics.forEach(
        one -> rows.computeIfAbsent(one.code(), c -> new HashSet<>()).add(Row.of(one.span())));
    Set<Code> before = EnumSet.noneOf(Code.class);
    for (Code root : ROOTS) {
      before.add(root);
      Set<Row> silent = rows.get(root);
      if (silent != null) {
        diagnostics.removeIf(one -> isEcho(one, before, silent));
      }
    }
  }

  private static boolean isEcho(Diagnostic one, Set<Code> before, Set<Row> silent) {
    if (before.contains(one.code()) || !ECHOES.contains(one.code())) {
      return false;
    }
    boolean echo = silent.contains(Row.of(one.span()));
    for (Diagnostic.Note note : one.notes()) {
      echo |= silent.contains(Row.of(note.span()));
    }
    return echo;
  }
}
