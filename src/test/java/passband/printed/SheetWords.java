package passband.printed;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import passband.printed.PrintedSheet.Wired;

/**
 * What somebody who knows the bench understands by the sentences of one sheet, and how the bench
 * must stand at its readings: written by hand, beside the sheet.
 */
final class SheetWords {
  private static final Pattern ON_THE_LINE = Pattern.compile("the (.+) on the line");
  private static final Pattern BLANK = Pattern.compile("\\{([A-Za-z]+)\\}");

  /** A sentence's effect and the words in its gaps, by the gaps' names. */
  record Said(String effect, Map<String, String> gaps) {}

  /**
   * How a test must find the bench; {@code state} is empty for the normal one, {@code drives} for
   * the outlet that is measured, {@code beside} for no contact that activates another outlet at the
   * same time.
   */
  record Expected(String wiring, boolean on, String state, String drives, String beside) {}

  private record Sentence(Pattern pattern, List<String> gaps, String effect) {}

  private final List<Sentence> sentences = new ArrayList<>();
  private final Map<String, String> keys = new LinkedHashMap<>();
  private final Map<String, Map<String, String>> wirings = new LinkedHashMap<>();
  private final Map<String, Expected> tests = new LinkedHashMap<>();
  private final Map<String, String> rests = new LinkedHashMap<>();
  private final Map<String, Double> duties = new LinkedHashMap<>();
  private final Set<String> instruments = new TreeSet<>();
  private final Set<String> loads = new TreeSet<>();
  private final Set<String> contacts = new TreeSet<>();
  private String analyzer = "";
  private boolean itself;

  static SheetWords read(Path file) {
    try {
      return of(Files.readAllLines(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static SheetWords of(List<String> lines) {
    SheetWords words = new SheetWords();
    lines.stream()
        .filter(line -> !line.startsWith("#") && !line.isBlank())
        .forEach(line -> words.add(line.split("\t")));
    return words;
  }

  private void add(String[] cells) {
    switch (cells[0]) {
      case "do" -> sentences.add(sentence(cells[1], cells[2]));
      case "key" -> keys.put(cells[1], cells[2]);
      case "wiring" -> wirings.put(cells[1], leads(cells[2]));
      case "analyzer" -> analyzer = cells[1];
      case "instrument" -> instruments.add(cells[1]);
      case "itself" -> itself = true;
      case "load" -> loads.add(cells[1]);
      case "contact" -> contacts.add(cells[1]);
      case "duty" ->
          duties.put(cells[1], Double.parseDouble(cells[3]) / Double.parseDouble(cells[2]));
      case "rest" -> rests.put(cells[1], cells[2]);
      case "test" ->
          tests.put(
              cells[1],
              new Expected(
                  cells[2], cells[3].equals("on"), cell(cells, 4), cell(cells, 5), cell(cells, 6)));
      default -> throw new IllegalArgumentException(cells[0]);
    }
  }

  private static String cell(String[] cells, int at) {
    return cells.length > at ? cells[at] : "";
  }

  private static Sentence sentence(String text, String effect) {
    List<String> gaps = new ArrayList<>();
    StringBuilder pattern = new StringBuilder();
    Matcher gap = BLANK.matcher(text);
    int from = 0;
    while (gap.find()) {
      pattern.append(Pattern.quote(text.substring(from, gap.start()))).append("(.+)");
      gaps.add(gap.group(1));
      from = gap.end();
    }
    pattern.append(Pattern.quote(text.substring(from)));
    return new Sentence(Pattern.compile(pattern.toString()), gaps, effect);
  }

  private static Map<String, String> leads(String text) {
    Map<String, String> leads = new LinkedHashMap<>();
    for (String lead : text.split("; ")) {
      String[] sides = lead.split(" = ");
      leads.put(sides[0], sides[1]);
    }
    return leads;
  }

  /** What a sentence says; null for one that nobody wrote down. */
  Said said(String text) {
    for (Sentence sentence : sentences) {
      Matcher matcher = sentence.pattern.matcher(text);
      if (matcher.matches()) {
        Map<String, String> gaps = new LinkedHashMap<>();
        for (int i = 0; i < sentence.gaps.size(); i++) {
          gaps.put(sentence.gaps.get(i), matcher.group(i + 1));
        }
        return new Said(sentence.effect, gaps);
      }
    }
    return null;
  }

  /**
   * How the bench must stand in a test, where that is said for one outlet by that; null for a test
   * that is not in the list.
   */
  Expected expected(String test, String outlet) {
    return tests.getOrDefault(test + " on " + outlet, tests.get(test));
  }

  /** The contact that activates another outlet at the same time; empty for none. */
  String beside(String test) {
    Expected expected = tests.get(test);
    return expected == null ? "" : expected.beside;
  }

  /**
   * Whether no lead is at any load that can be set, where the sheet's words say which there are.
   */
  boolean isOpen(SecondLeads leads) {
    return !loads.isEmpty() && !leads.carry(loads);
  }

  /** Whether an outlet, a mode and what it is set to are named together. */
  boolean isSetAt(String text) {
    String[] parts = text.split(", ");
    return parts.length == 3 && isMode(parts[1]);
  }

  /** Whether a contact is named in full. */
  boolean isContact(String name) {
    return contacts.contains(name);
  }

  boolean isMode(String heading) {
    return keys.containsKey(heading);
  }

  boolean isWiring(String heading) {
    return wirings.containsKey(heading);
  }

  /** The contact that turns a mode on, {@code by hand} where no lead does it. */
  String contact(String mode, String outlet) {
    return filled(keys.get(mode), outlet);
  }

  /** Each lead with its two ends, {@code end | end}. */
  Map<String, String> wiring(String heading, String outlet) {
    Map<String, String> leads = new LinkedHashMap<>();
    wirings.get(heading).forEach((lead, ends) -> leads.put(lead, filled(ends, outlet)));
    return leads;
  }

  /** How long a mode has to rest after it was on, in s, by its duty; none where it has none. */
  double rest(String mode, String seconds) {
    return seconds == null || !duties.containsKey(mode)
        ? 0
        : duties.get(mode) * Double.parseDouble(seconds);
  }

  /** Where each setting is that a line does not give. */
  Map<String, String> rests() {
    return rests;
  }

  /** What a row of a wiring's table says of jacks, with the name of their instrument. */
  String jack(Wired row) {
    String cell = row.jack();
    boolean named = cell.isEmpty() || instruments.stream().anyMatch(cell::startsWith);
    return named ? cell : (row.owner().isEmpty() ? analyzer : row.owner()) + ": " + cell;
  }

  /** The name of the analyzer's jack or key as the sheet gives it in full. */
  String onAnalyzer(String jack) {
    return analyzer + ", " + jack;
  }

  /** Whether the generator shows what is read, so that no analyzer has to run. */
  boolean showsItself() {
    return itself;
  }

  /** The analyzer to whose keys contacts are wired. */
  String analyzer() {
    return analyzer;
  }

  /** What a sentence for each line says on a line of these cells. */
  static String onLine(String text, Map<String, String> cells) {
    Matcher matcher = ON_THE_LINE.matcher(text);
    if (!matcher.matches()) {
      return text;
    }
    String column = matcher.group(1);
    return cells.entrySet().stream()
        .filter(cell -> cell.getKey().equalsIgnoreCase(column))
        .map(Map.Entry::getValue)
        .findFirst()
        .orElse("?");
  }

  private String filled(String text, String outlet) {
    return text.replace("{outlet}", outlet).replace("{analyzer}", analyzer);
  }
}
