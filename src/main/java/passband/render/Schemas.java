package passband.render;

import java.util.List;

/**
 * The published schemas of what Passband writes as JSON (JSON Schema 2020-12). Each has an
 * identity, {@code urn:passband:NAME:VERSION}, and fits what says {@code "format":
 * "passband-NAME/VERSION"}.
 */
public final class Schemas {
  /** The names of the formats. */
  public static final List<String> NAMES =
      List.of(
          "limits",
          "diagnostics",
          "coverage",
          "steps",
          "detect",
          "diff",
          "verdicts",
          "record",
          "history",
          "transcript");

  private Schemas() {}

  /** The whole schema of one of the names. */
  public static String text(String name) {
    return Checklist.resource(name + ".schema.json");
  }
}
