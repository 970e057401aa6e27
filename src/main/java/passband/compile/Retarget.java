package passband.compile;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Which instruments a procedure is compiled for instead of its own.
 *
 * @param any the name of an instrument for a procedure that has a single one, whatever its role;
 *     null when none is given
 * @param byRole by role the name of an instrument, or of the role whose unit takes this one too
 */
record Retarget(@Nullable String any, Map<String, String> byRole) {
  /** Every procedure keeps its own. */
  static final Retarget NONE = new Retarget(null, Map.of());

  /** As written: {@code NAME}, or {@code ROLE=NAME} as often as wanted, with commas between. */
  static Retarget of(@Nullable String written) {
    if (written == null) {
      return NONE;
    }
    String any = null;
    Map<String, String> byRole = new LinkedHashMap<>();
    for (String part : written.split(",", -1)) {
      int equals = part.indexOf('=');
      if (equals < 0) {
        any = part.strip();
      } else {
        byRole.put(part.substring(0, equals).strip(), part.substring(equals + 1).strip());
      }
    }
    return new Retarget(any, byRole);
  }

  /** For one role of one procedure. */
  static Retarget of(String role, String name) {
    return new Retarget(null, Map.of(role, name));
  }

  /** Whether every procedure keeps its own. */
  boolean isNone() {
    return any == null && byRole.isEmpty();
  }

  /** The name that a role is given; null where the procedure's own stays. */
  @Nullable String name(String role, boolean single) {
    String named = byRole.get(role);
    return named != null || !single ? named : any;
  }
}
