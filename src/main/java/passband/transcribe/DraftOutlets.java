package passband.transcribe;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** The outlets of a draft; their terminals are placeholders. */
final class DraftOutlets {
  private static final String UNNAMED = "Output";

  /** Between the outlets that a cell names; a stroke only in 'A/B' and '1/2'. */
  private static final Pattern BETWEEN =
      Pattern.compile(
          "\\s*[,;&+]\\s*|\\s+(?:and|und|et)\\s+|(?<=\\b\\w{1,2})\\s*/\\s*(?=\\w{1,2}$)",
          Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CHARACTER_CLASS);

  /** Letters at most of a further outlet whose name is printed without its first words. */
  private static final int SHORT = 2;

  private final ManualTable table;
  private final List<String> titles = new ArrayList<>();
  private final List<String> names;

  DraftOutlets(ManualTable table) {
    this.table = table;
    for (int mode = 0; mode < table.modes().size(); mode++) {
      for (String title : titles(mode)) {
        if (!titles.contains(title)) {
          titles.add(title);
        }
      }
    }
    this.names = DraftNames.names(titles, "outlet");
  }

  private List<String> titles(int mode) {
    String outlet = table.modes().get(mode).outlet();
    return outlet.isEmpty() ? List.of(UNNAMED) : several(outlet);
  }

  /**
   * The outlets that share the rows of a cell: 'Monopolar A and B' is two, 'Bipolar/Foot' one.
   * Where a cell can be read either way they are several, since an outlet too many is found on the
   * bench and one that is forgotten is not.
   */
  static List<String> several(String cell) {
    List<String> all = new ArrayList<>();
    for (String part : BETWEEN.split(cell.strip())) {
      String first = all.isEmpty() ? "" : all.get(0);
      int last = first.lastIndexOf(' ');
      String title =
          last > 0 && part.length() <= SHORT ? first.substring(0, last + 1) + part : part;
      if (!title.isEmpty() && !all.contains(title)) {
        all.add(title);
      }
    }
    return all.size() < 2 ? List.of(cell) : all;
  }

  /** The names of a mode's outlets, between commas. */
  String names(int mode) {
    return String.join(", ", titles(mode).stream().map(t -> names.get(titles.indexOf(t))).toList());
  }

  /** The cells that were taken as several outlets, for the list of what is to be settled. */
  List<String> remarks() {
    List<String> remarks = new ArrayList<>();
    for (int mode = 0; mode < table.modes().size(); mode++) {
      List<String> several = titles(mode);
      String remark =
          String.format(
              "'%s' was taken as %d outlets, each with all of these rows: %s.",
              table.modes().get(mode).outlet(), several.size(), String.join("; ", several));
      if (several.size() > 1 && !remarks.contains(remark)) {
        remarks.add(remark);
      }
    }
    return remarks;
  }

  /** The declarations of those that some row is of, and of the earth that leakage flows to. */
  List<String> declared(List<ManualRow> rows) {
    List<String> lines = new ArrayList<>();
    for (String title : titles) {
      if (rows.stream().anyMatch(row -> titles(row.mode()).contains(title))) {
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
