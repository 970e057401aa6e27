package passband.plan;

import java.util.Map;
import passband.model.Terminal;

/**
 * What names are called in another revision of the procedure, where they were renamed: tests,
 * outlets and modes, each by its own name, and declarations of a file by kind and name.
 */
public record Naming(
    Map<String, String> tests,
    Map<String, String> outlets,
    Map<String, String> modes,
    Map<String, String> declared) {
  /** Before the outlet that delivers while another is measured. */
  private static final String DRIVEN = "driven=";

  /** Every name stays as it is. */
  public static final Naming OWN = new Naming(Map.of(), Map.of(), Map.of(), Map.of());

  String test(String name) {
    return tests.getOrDefault(name, name);
  }

  String outlet(String name) {
    return outlets.getOrDefault(name, name);
  }

  String mode(String name) {
    return modes.getOrDefault(name, name);
  }

  /** A point's or limit's identity, {@code TEST/OUTLET/MODE/…}. */
  String point(String id) {
    String[] parts = id.split("/", -1);
    if (parts.length < 3) {
      return id;
    }
    parts[0] = test(parts[0]);
    parts[1] = outlet(parts[1]);
    parts[2] = mode(parts[2]);
    for (int i = 3; i < parts.length; i++) {
      if (parts[i].startsWith(DRIVEN)) {
        parts[i] = DRIVEN + outlet(parts[i].substring(DRIVEN.length()));
      }
    }
    return String.join("/", parts);
  }

  /** A run's identity, {@code TEST/OUTLET} or {@code TEST/OUTLET/PHASE}; another name as it is. */
  String run(String id) {
    String[] parts = id.split("/", -1);
    if (parts.length < 2) {
      return id;
    }
    parts[0] = test(parts[0]);
    parts[1] = outlet(parts[1]);
    return String.join("/", parts);
  }

  /** A terminal's name, {@code OUTLET.TERMINAL} or {@code analyzer.TERMINAL}. */
  String terminal(Terminal terminal) {
    return terminal.onAnalyzer()
        ? terminal.id()
        : outlet(terminal.owner()) + "." + terminal.name().text();
  }

  /** A pole's name, {@code OUTLET.POLE}. */
  String pole(String id) {
    int dot = id.indexOf('.');
    return dot < 0 ? id : outlet(id.substring(0, dot)) + id.substring(dot);
  }

  /** The declaration that a warning is allowed in: {@code test NAME}, {@code mode NAME}. */
  String place(String place) {
    int space = place.indexOf(' ') + 1;
    String name = place.substring(space);
    return switch (place.substring(0, space)) {
      case "test " -> "test " + test(name);
      case "mode " -> "mode " + mode(name);
      default -> declared.getOrDefault(place, place);
    };
  }
}
