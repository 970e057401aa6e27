package passband.transcribe;

import java.util.ArrayList;
import java.util.List;

/** The outlets of a draft; their terminals are placeholders. */
final class DraftOutlets {
  private static final String UNNAMED = "Output";

  private final ManualTable table;
  private final List<String> titles = new ArrayList<>();
  private final List<String> names;

  DraftOutlets(ManualTable table) {
    this.table = table;
    for (int mode = 0; mode < table.modes().size(); mode++) {
      if (!titles.contains(title(mode))) {
        titles.add(title(mode));
      }
    }
    this.names = DraftNames.names(titles, "outlet");
  }

  private String title(int mode) {
    String outlet = table.modes().get(mode).outlet();
    return outlet.isEmpty() ? UNNAMED : outlet;
  }

  /** The name of a mode's outlet. */
  String name(int mode) {
    return names.get(titles.indexOf(title(mode)));
  }

  /** The declarations of those that some row is of, and of the earth that leakage flows to. */
  List<String> declared(List<ManualRow> rows) {
    List<String> lines = new ArrayList<>();
    for (String title : titles) {
      if (rows.stream().anyMatch(row -> title(row.mode()).equals(title))) {
        lines.add(
            "  outlet " + names.get(titles.indexOf(title)) + " " + DraftNames.text(title) + " {");
        lines.add("    pole first  \"first terminal\"");
        lines.add("    pole second \"second terminal\"");
        lines.add("  }");
      }
    }
    if (table.isLeakage()) {
      lines.add("  outlet protective-earth \"Protective earth\" {");
      lines.add("    earth terminal \"earth terminal\"");
      lines.add("  }");
    }
    return lines;
  }
}
