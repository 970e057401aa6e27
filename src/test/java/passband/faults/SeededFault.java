package passband.faults;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import passband.testing.Repository;

/**
 * One fault as somebody makes it who types a manual into a procedure, or a data sheet into a
 * profile.
 *
 * @param area the list that it stands in
 * @param kind a short name of the kind of fault
 * @param file the file of the tests' library that it is in
 * @param before the text that is right, once in the file
 * @param after what is there instead
 */
record SeededFault(String area, String kind, Harm harm, String file, String before, String after) {

  /** What comes of a fault that nobody finds. */
  enum Harm {
    /** Somebody can be hurt. */
    INJURY("injury"),
    /** A faulty generator can pass. */
    FALSE_PASS("false-pass"),
    /** Work is lost, or a good generator fails. */
    SLIP("slip");

    private final String word;

    Harm(String word) {
      this.word = word;
    }

    static Harm of(String word) {
      for (Harm one : values()) {
        if (one.word.equals(word)) {
          return one;
        }
      }
      throw new IllegalArgumentException("no harm: " + word);
    }
  }

  /** The faults of every list. */
  static List<SeededFault> all() {
    List<SeededFault> faults = new ArrayList<>();
    for (Path list :
        Repository.files(Repository.ROOT.resolve("src/test/resources/faults"), ".tsv")) {
      String area = list.getFileName().toString().replace(".tsv", "");
      Repository.text(list).lines().skip(1).forEach(line -> faults.add(parse(area, line)));
    }
    return faults;
  }

  private static SeededFault parse(String area, String line) {
    String[] cells = line.split("\t", -1);
    if (cells.length != 5) {
      throw new IllegalArgumentException(area + ": not five cells: " + line);
    }
    return new SeededFault(
        area, cells[0], Harm.of(cells[1]), cells[2], unescaped(cells[3]), unescaped(cells[4]));
  }

  private static String unescaped(String cell) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < cell.length(); i++) {
      char c = cell.charAt(i);
      if (c == '\\') {
        char next = cell.charAt(++i);
        text.append(next == 'n' ? '\n' : next == 't' ? '\t' : next);
      } else {
        text.append(c);
      }
    }
    return text.toString();
  }

  /** How often the text that is right stands in a file. */
  int timesIn(String text) {
    int times = 0;
    for (int at = text.indexOf(before); at >= 0; at = text.indexOf(before, at + 1)) {
      times++;
    }
    return times;
  }

  /** A file with the fault in it. */
  String in(String text) {
    int at = text.indexOf(before);
    return text.substring(0, at) + after + text.substring(at + before.length());
  }

  @Override
  public String toString() {
    return area
        + ": "
        + kind
        + " ("
        + file
        + ": '"
        + after.strip()
        + "' for '"
        + before.strip()
        + "')";
  }
}
