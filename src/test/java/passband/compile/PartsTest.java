package passband.compile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.format.Formatter;
import passband.source.SourceFile;
import passband.testing.Repository;
import passband.testing.SameSheet;
import passband.testing.Snippet;

/** A part that is included means what its lines would mean in that place. */
class PartsTest {
  private static final String MAIN = "sedge-170/sedge-170-full.pband";
  private static final Pattern INCLUDE = Pattern.compile("(?m)^  include +(.+)\\n");
  private static final Pattern PART =
      Pattern.compile("(?m)^part (\\S+) \\{\\n((?:  .*\\n|\\n|#.*\\n)*)\\}\\n");

  private static Map<String, String> demo() {
    return new HashMap<>(Repository.texts(Repository.PROCEDURES));
  }

  /** The demo's procedures that include parts. */
  static Stream<String> including() {
    return demo().entrySet().stream()
        .filter(file -> file.getKey().contains("/"))
        .filter(file -> INCLUDE.matcher(file.getValue()).find())
        .map(Map.Entry::getKey)
        .sorted();
  }

  /** The lines of each part of a library, by name. */
  private static Map<String, String> parts(Map<String, String> files) {
    Map<String, String> parts = new HashMap<>();
    for (String text : files.values()) {
      PART.matcher(text).results().forEach(part -> parts.put(part.group(1), part.group(2)));
    }
    return parts;
  }

  /** A source with the lines of parts in the place of the lines that include them. */
  private static String writtenOut(String text, Map<String, String> parts) {
    return INCLUDE
        .matcher(text)
        .replaceAll(
            line ->
                Matcher.quoteReplacement(
                    Stream.of(line.group(1).split(", "))
                        .map(name -> writtenOut(parts.get(name), parts))
                        .collect(Collectors.joining())));
  }

  @Test
  void threeProceduresAtLeastIncludeParts() {
    assertTrue(including().count() >= 3);
  }

  @ParameterizedTest
  @MethodSource("including")
  void theLinesWrittenOutGiveTheSameSheet(String main) {
    Map<String, String> files = demo();
    Snippet with = Snippet.compile(files, main, null);
    String out = writtenOut(files.get(main), parts(files));
    assertNotEquals(files.get(main), out);
    files.put(main, out);
    Snippet without = Snippet.compile(files, main, null);
    assertEquals("", with.report());
    assertEquals("", without.report());
    SameSheet.assertSame(without.plans().get(0), with.plans().get(0));
  }

  /** Several on one line are those one after the other. */
  @Test
  void partsOfOneLineStandInItsOrder() {
    Map<String, String> files = demo();
    String main = files.get(MAIN);
    files.put(MAIN, main.replace("  include closing\n", "  include closing, last\n"));
    files.merge(
        "house.pband",
        "\npart last {\n  section last \"Last\" {\n    confirm \"All is tidy.\"\n  }\n}\n",
        String::concat);
    Snippet one = Snippet.compile(files, MAIN, null);
    files.put(MAIN, main.replace("  include closing\n", "  include closing\n  include last\n"));
    Snippet two = Snippet.compile(files, MAIN, null);
    SameSheet.assertSame(two.plan(), one.plan());
    files.put(MAIN, main.replace("  include closing\n", "  include last, closing\n"));
    assertNotEquals(two.plan().digest(), Snippet.compile(files, MAIN, null).plan().digest());
  }

  /** What is wrong in a part is said there, once, with the procedure that includes it. */
  @Test
  void aFaultInAPartNamesTheProcedure() {
    Map<String, String> files = demo();
    files.computeIfPresent(
        "service-visit.pband", (path, text) -> text.replace("to safety.probe", "to safety.prob"));
    List<Diagnostic> found = Snippet.compile(files, MAIN, null).diagnostics();
    assertEquals(1, found.size(), found.toString());
    assertEquals("service-visit.pband", found.get(0).span().file().path());
    List<String> notes = new ArrayList<>();
    found.get(0).notes().forEach(note -> notes.add(note.span() + " " + note.message()));
    assertTrue(
        notes.stream()
            .anyMatch(
                note ->
                    note.startsWith(MAIN)
                        && note.endsWith("included here, in the procedure 'sedge-170-full'")),
        notes.toString());
  }

  /** An allow of the procedure does not answer for a part, one of the part does. */
  @ParameterizedTest
  @CsvSource({"procedure, false", "part, true"})
  void anAllowReachesItsOwnLines(String where, boolean reaches) {
    Map<String, String> files = demo();
    String allow = "  allow looser-together because \"A trial.\"\n";
    String test =
        "part extra {\n"
            + (where.equals("part") ? "  allow load-off-rated because \"A trial.\"\n" : "")
            + "  test extra \"Extra\" {\n    outlet mono-1\n    setup mono\n"
            + "    accept by rated-output\n    table {\n"
            + "      mode | setting/W | load/ohm | activation\n      slice | 50 | 300 | yellow\n"
            + "    }\n  }\n}\n";
    files.merge("house.pband", test, String::concat);
    String own = where.equals("part") ? "" : allow.replace("looser-together", "load-off-rated");
    files.computeIfPresent(
        MAIN,
        (path, text) -> text.replace("  include closing\n", own + "  include extra, closing\n"));
    Snippet snippet = Snippet.compile(files, MAIN, null);
    // The curve's own 'allow' is within its test, so this is of the part's row.
    assertEquals(!reaches, snippet.codes().contains("load-off-rated"), snippet.report());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '!',
      value = {
        "include closing!include closing, closing!repeated-item",
        "include closing!include closng!unknown-name",
        "include  service-bench!include  service-bench~decision simple!repeated-item",
        "include  service-bench!include  service-bench~phases one, two!repeated-item",
        "include  service-bench!include  service-bench~language de~language fr!repeated-item",
        "include  service-bench!include  service-bench~caution burn \"Hot.\"!duplicate-name",
        "section found!section inspection!duplicate-name",
        "setup mono!setup bond!duplicate-name",
      })
  void namesClashAsIfWrittenThere(String from, String to, String code) {
    Map<String, String> files = demo();
    String main = files.get(MAIN);
    files.put(MAIN, main.replace(from, to.replace("~", "\n  ")));
    assertNotEquals(main, files.get(MAIN));
    Snippet snippet = Snippet.compile(files, MAIN, null);
    assertTrue(snippet.codes().contains(code), snippet.report());
  }

  /** What a procedure lacks while a part is not found is not held against it. */
  @ParameterizedTest
  @MethodSource("including")
  void aPartThatIsNotFoundIsTheOnlyFault(String main) {
    String text = demo().get(main);
    List<String> names =
        INCLUDE
            .matcher(text)
            .results()
            .flatMap(line -> Stream.of(line.group(1).split(", ")))
            .toList();
    for (String name : names) {
      Map<String, String> files = demo();
      files.put(main, text.replaceAll("(include .*)\\b" + name + "\\b", "$1" + name + "-x"));
      Snippet snippet = Snippet.compile(files, main, null);
      assertEquals(List.of("unknown-name"), snippet.codes(), name + "\n" + snippet.report());
      assertEquals(name + "-x", snippet.diagnostics().get(0).span().text());
    }
  }

  /** Leads that a part names and the procedure too are one fault, in the second of the lines. */
  @ParameterizedTest
  @MethodSource("including")
  void leadsThatAreNamedTwiceAreOneFault(String main) {
    Map<String, String> files = demo();
    String leads = Snippet.compile(files, main, null).plan().tree().leads().get(0).text();
    files.computeIfPresent(
        main, (path, text) -> text.replaceFirst("(?m)^  include closing$", "$0\n  leads " + leads));
    Snippet snippet = Snippet.compile(files, main, null);
    assertEquals(List.of("repeated-item"), snippet.codes(), snippet.report());
    assertEquals(main, snippet.diagnostics().get(0).span().file().path());
  }

  /** A part that no procedure includes is read too. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '!',
      value = {
        "caution a \"A.\"~caution a \"B.\"!duplicate-name",
        "gate a \"A.\"~gate a \"B.\"!duplicate-name",
        "decision simple~decision guarded!repeated-item",
        "revision \"A\" on 2026-01-31!unknown-word",
        "device gen~device gen!repeated-item",
        "order by test!unknown-word",
        "confirm \"A.\"!unknown-word",
        "include p!include-cycle",
      })
  void aPartThatNobodyIncludesIsChecked(String lines, String code) {
    Snippet snippet = Snippet.compile("part p {\n  " + lines.replace("~", "\n  ") + "\n}\n");
    assertEquals(List.of(code), snippet.codes(), snippet.report());
  }

  @Test
  void theLayoutIsTheOne() {
    String text = "part p {\n include a,b\n decision guarded\n  caution x \"X.\"\n}\n";
    String once = Formatter.format(new SourceFile("p.pband", text), new Diagnostics());
    assertEquals("part p {\n  include  a, b\n  decision guarded\n  caution  x \"X.\"\n}\n", once);
    assertEquals(once, Formatter.format(new SourceFile("p.pband", once), new Diagnostics()));
  }
}
