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
import passband.diagnostic.Code;
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
  private static final String OTHER = "fescue-3/fescue-3-service.pband";

  /** A part with a row whose load is none that its mode is rated for. */
  private static final String EXTRA =
      "part extra {\n"
          + "  test extra \"Extra\" {\n    outlet mono-1\n    setup mono\n"
          + "    accept by rated-output\n    table {\n"
          + "      mode | setting/W | load/ohm | activation\n      slice | 50 | 300 | yellow\n"
          + "    }\n  }\n}\n";

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

  /** An allow of the procedure answers for its parts, one of the part for whoever includes it. */
  @ParameterizedTest
  @CsvSource({"procedure, true", "part, true", "other, false"})
  void anAllowReachesWhatItsBlockIncludes(String where, boolean reaches) {
    Map<String, String> files = demo();
    String allow =
        where.equals("other")
            ? "  allow looser-together because \"A trial.\"\n"
            : "  allow load-off-rated because \"A trial.\"\n";
    String test =
        where.equals("part")
            ? EXTRA.replace("{\n  test", "{\n  allow load-off-rated because \"A trial.\"\n  test")
            : EXTRA;
    files.merge("house.pband", test, String::concat);
    String own = where.equals("part") ? "" : allow;
    files.computeIfPresent(
        MAIN,
        (path, text) -> text.replace("  include closing\n", own + "  include extra, closing\n"));
    Snippet snippet = Snippet.compile(files, MAIN, null);
    // The curve's own 'allow' is within its test, so this is of the part's row.
    assertEquals(!reaches, snippet.codes().contains("load-off-rated"), snippet.report());
    assertEquals(where.equals("other"), snippet.codes().contains("allow-unused"), snippet.report());
  }

  /** What one procedure answers for, another that includes the same part does not. */
  @ParameterizedTest
  @CsvSource({"one, two", "two, one"})
  void anAllowReachesForItsOwnProcedureAlone(String first, String second) {
    Map<String, String> files = demo();
    files.merge("house.pband", EXTRA, String::concat);
    for (String name : List.of("one", "two")) {
      String allow = name.equals("one") ? "  allow load-off-rated because \"A trial.\"\n" : "";
      String text =
          files
              .get(MAIN)
              .replace("procedure sedge-170-full", "procedure " + name)
              .replace("  include closing\n", allow + "  include extra, closing\n");
      files.put("sedge-170/" + name + ".pband", text);
    }
    files.put(
        "both.pband",
        "use \"sedge-170/" + first + ".pband\"\nuse \"sedge-170/" + second + ".pband\"\n");
    Snippet snippet = Snippet.compile(files, "both.pband", null);
    assertEquals(2, snippet.plans().size());
    List<Diagnostic> stands =
        snippet.diagnostics().stream().filter(d -> d.code() == Code.LOAD_OFF_RATED).toList();
    assertEquals(1, stands.size(), snippet.report());
    assertTrue(
        stands.get(0).notes().stream().anyMatch(note -> note.message().endsWith("'two'")),
        snippet.report());
    assertTrue(!snippet.codes().contains("allow-unused"), snippet.report());
  }

  /**
   * Of two groups of files that share a part, one leaves it: it is looked at there, and what is
   * found so is said where no group includes it, and else as the one that does says it.
   */
  @ParameterizedTest
  @CsvSource({"true, 1", "false, 0"})
  void aPartIsLookedAtByItselfWhereNoGroupIncludesIt(boolean included, int notes) {
    Map<String, String> files = demo();
    files.computeIfPresent(
        "house.pband",
        (path, text) ->
            text
                + "part fault {\n  section extra \"Extra\" {\n"
                + "    record mass \"Mass\" in lbs\n  }\n}\n");
    if (included) {
      files.computeIfPresent(
          MAIN, (path, text) -> text.replace("  include closing\n", "  include fault, closing\n"));
    }
    for (List<String> order : List.of(List.of(MAIN, OTHER), List.of(OTHER, MAIN))) {
      FoundTogether together = new FoundTogether();
      for (String main : order) {
        Diagnostics found = new Diagnostics();
        Compiler compiler = new Compiler(Snippet.library(files, main, found), null, found);
        compiler.compile();
        together.take(found, compiler.usedAllows(), compiler.takenUp(), List.of());
      }
      List<Diagnostic> all = together.diagnostics().list();
      assertEquals(1, all.size(), all.toString());
      assertEquals(Code.UNKNOWN_UNIT, all.get(0).code());
      assertEquals(notes, all.get(0).notes().size(), all.toString());
    }
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
        "include q!unknown-name",
        "section s \"S\" {~record m \"M\" in lbs~}!unknown-unit",
        "section s \"S\" {~record m \"M\" in V at most 3 A~}!unit-mismatch",
        "section s \"S\" {~record m \"M\" in V at most 3~}!missing-unit",
        "section s \"S\" {~do \"Press {the key}.\"~}!unknown-placeholder",
        "section s \"S\" {~wait 3 A~}!unit-mismatch",
        "test t \"T\" {~output off~accept curent at most 1 A~}!unknown-quantity",
        "test t \"T\" {~output off~accept current at most 1 V~}!unit-mismatch",
        "test t \"T\" {~output off~accept current within 3 V of offset~}!unit-mismatch",
        "test t \"T\" {~output off~accept current at most 1 A, read as time~}!unit-mismatch",
        "test t \"T\" {~output off~accept current at most 1 A~table {~lod/ohm~3~}~}!unknown-column",
        "test t \"T\" {~output off~accept current at most 1 A~table {~load/om~3~}~}!unknown-unit",
        "test t \"T\" {~output off~accept current at most 1 A~table {~load/V~3~}~}!unit-mismatch",
        "test t \"T\" {~output off~accept current at most 1 A~table {~a | b~3~}~}!cell-count",
        "test t \"T\" {~output off~}!missing-item",
        "language xx!unknown-language",
      })
  void aPartThatNobodyIncludesIsChecked(String lines, String code) {
    Snippet snippet = Snippet.compile("part p {\n  " + lines.replace("~", "\n  ") + "\n}\n");
    assertEquals(List.of(code), snippet.codes(), snippet.report());
  }

  /** A rule that no test uses: what no bench and no table could make right. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '!',
      value = {
        "accept curent within 5 % of setting!unknown-quantity",
        "accept current within 5 V of setting!unit-mismatch",
        "accept current within 5 mAA of setting!unknown-unit",
        "accept current within 5 %!missing-item",
        "accept current from 3 A to setting * 1 om!unknown-unit",
        "accept current from 3 V to setting!unit-mismatch",
        "accept current from 3 A to 2 A!reversed-range",
        "accept current at most 3!missing-unit",
        "accept time at most 3 s, read as power!unit-mismatch",
        "accept by other!wrong-kind",
        "accept current within tol of nominal!",
        "accept current within 5 mA of nominal * share!",
        "accept power from stated, read as current!",
        "accept power from output!",
      })
  void aRuleThatNoTestUsesIsChecked(String line, String code) {
    Snippet snippet = Snippet.compile("rule r \"R\" {\n  " + line + "\n}\n");
    assertEquals(code == null ? List.of() : List.of(code), snippet.codes(), snippet.report());
  }

  @Test
  void theLayoutIsTheOne() {
    String text = "part p {\n include a,b\n decision guarded\n  caution x \"X.\"\n}\n";
    String once = Formatter.format(new SourceFile("p.pband", text), new Diagnostics());
    assertEquals("part p {\n  include  a, b\n  decision guarded\n  caution  x \"X.\"\n}\n", once);
    assertEquals(once, Formatter.format(new SourceFile("p.pband", once), new Diagnostics()));
  }
}
