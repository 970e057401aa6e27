package passband.edit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.compile.Compiler;
import passband.compile.PlanOutline;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.diagnostic.TextReport;
import passband.library.DisplayPaths;
import passband.library.Library;
import passband.library.ParsedFiles;
import passband.library.ReleaseEntry;
import passband.library.SourceReader;
import passband.plan.Meaning;
import passband.plan.Plan;
import passband.plan.PlanStep;
import passband.resolve.Names.Occurrence;
import passband.resolve.Names.Role;
import passband.resolve.Symbol;
import passband.source.Span;
import passband.syntax.Tree;
import passband.testing.Repository;

/**
 * The law of renaming: every declared name of a library, one after the other, takes a new name;
 * after each the whole library compiles as before, for every analyzer that its procedures see, and
 * its plans are the same but for the name.
 */
class RenameLawTest {
  private static final String SUFFIX = "-zz9";

  /** A library with names, and places for names, that the demo lacks. */
  private static final Path FIXTURE = Repository.ROOT.resolve("src/test/resources/rename");

  /** The names that the language gives a meaning of their own: they stay. */
  private static boolean fixed(Symbol symbol) {
    return symbol.kind().equals("action")
            && (PlanStep.REPLACEABLE.contains(symbol.text()) || symbol.text().equals("hold"))
        || symbol.kind().equals("caution") && symbol.text().equals("burn");
  }

  /** The texts of a library by path. */
  private static Map<String, String> texts(Path root) {
    Map<String, String> texts = new TreeMap<>();
    for (String ending : List.of(".pband", ".csv")) {
      for (Path file : Repository.files(root, ending)) {
        texts.put(root.relativize(file).toString(), Repository.text(file));
      }
    }
    return texts;
  }

  private static SourceReader reader(Map<String, String> texts) {
    return path -> {
      if (!texts.containsKey(path)) {
        throw new NoSuchFileException(path);
      }
      return texts.get(path).getBytes(StandardCharsets.UTF_8);
    };
  }

  private static List<String> sources(Map<String, String> texts) {
    return texts.keySet().stream().filter(p -> p.endsWith(".pband")).toList();
  }

  private static WholeLibrary library(Map<String, String> texts) throws IOException {
    return WholeLibrary.of(
        new ParsedFiles(DisplayPaths.prefixed("", ""), reader(texts)), sources(texts));
  }

  private static Map<String, String> edited(Map<String, String> texts, List<Fix.Edit> edits) {
    Map<String, String> made = new TreeMap<>(texts);
    edits.stream()
        .sorted(Comparator.comparing(Fix.Edit::span).reversed())
        .forEach(
            edit -> {
              String path = edit.span().file().path();
              String text = made.get(path);
              made.put(
                  path,
                  text.substring(0, edit.span().start())
                      + edit.text()
                      + text.substring(edit.span().end()));
            });
    return made;
  }

  /**
   * What each file comes to with each analyzer that it sees, without the suffix: errors with their
   * lines, and every plan in full.
   */
  private static Map<String, String> outcome(Map<String, String> texts) throws IOException {
    Map<String, String> outcome = new LinkedHashMap<>();
    for (String path : sources(texts)) {
      List<String> analyzers = new ArrayList<>();
      analyzers.add(null);
      for (int i = 0; i < analyzers.size(); i++) {
        Diagnostics found = new Diagnostics();
        Library library = new Library(DisplayPaths.prefixed("", ""), reader(texts), found);
        library.load(path);
        StringBuilder out = new StringBuilder();
        for (Plan plan : new Compiler(library, analyzers.get(i), found).compile()) {
          out.append(plan.name()).append('\n').append(PlanOutline.of(plan));
        }
        found.list().stream()
            .filter(Diagnostic::isError)
            .forEach(d -> out.append(d.span().line()).append(' ').append(d.message()).append('\n'));
        outcome.put(path + " with analyzer " + i, bare(out.toString()));
        if (i == 0) {
          analyzers.addAll(analyzers(library));
        }
      }
    }
    return outcome;
  }

  private static List<String> analyzers(Library library) {
    return library.files().stream()
        .flatMap(file -> file.declarations().stream())
        .filter(Tree.Analyzer.class::isInstance)
        .map(one -> one.name().text())
        .toList();
  }

  private static String bare(String text) {
    return text.replace(SUFFIX, "").replace(SUFFIX.replace('-', ' '), "");
  }

  static List<Path> libraries() {
    return List.of(Repository.PROCEDURES, FIXTURE);
  }

  @TestFactory
  Stream<DynamicTest> everyNameCanBeRenamed() throws IOException {
    List<DynamicTest> tests = new ArrayList<>();
    for (Path root : libraries()) {
      Map<String, String> texts = texts(root);
      Map<String, String> before = outcome(texts);
      WholeLibrary library = library(texts);
      for (Occurrence one : library.symbols().all()) {
        if (one.declaration() && !fixed(one.symbol())) {
          String title =
              root.getFileName()
                  + " "
                  + one.span()
                  + " "
                  + one.symbol().kind()
                  + " "
                  + one.symbol();
          tests.add(
              DynamicTest.dynamicTest(
                  title,
                  () -> {
                    String name = one.symbol().text() + SUFFIX;
                    List<Fix.Edit> edits =
                        Rename.to(library, one.span().file(), one.span().start(), name);
                    assertTrue(edits.stream().anyMatch(e -> e.span().equals(one.span())));
                    assertEquals(before, outcome(edited(texts, edits)));
                  }));
        }
      }
    }
    return tests.stream();
  }

  @Test
  void theLibrariesAreSoundAndHaveEveryKindOfName() throws IOException {
    Set<String> kinds = new TreeSet<>();
    for (Path root : libraries()) {
      WholeLibrary library = library(texts(root));
      assertEquals("", TextReport.of(library.errors()), root.toString());
      library.symbols().all().forEach(o -> kinds.add(o.symbol().kind()));
    }
    assertEquals(
        Set.of(
            "accessory",
            "earth",
            "action",
            "adjust",
            "analyzer",
            "caution",
            "confirm",
            "contact",
            "device",
            "gate",
            "jack",
            "key",
            "lead",
            "leads",
            "link",
            "load",
            "mode",
            "option",
            "outlet",
            "part",
            "phase",
            "pole",
            "procedure",
            "quantity",
            "record",
            "role",
            "rule",
            "section",
            "setting",
            "setup",
            "state",
            "test"),
        kinds);
  }

  // ---- places ----

  /** Where a thing of the fixture goes by its name, as {@code file:line:column}. */
  private static List<String> places(String path, String kind, String name) throws IOException {
    return library(texts(FIXTURE)).symbols().all().stream()
        .filter(o -> o.symbol().kind().equals(kind) && o.symbol().text().equals(name))
        .filter(o -> o.symbol().name().span().file().path().equals(path))
        .map(o -> o.span() + (o.role() == Role.FORMER ? " former" : ""))
        .distinct()
        .toList();
  }

  @Test
  void cellsOfATableFileHaveTheirPlace() throws IOException {
    assertEquals(
        List.of(
            "beta.pband:16:7",
            "beta.pband:26:19",
            "device.pband:22:8",
            "device.pband:22:60 former",
            "device.pband:63:8",
            "tables/output.csv:2:2",
            "tables/output.csv:3:2",
            "tables/output.csv:4:1"),
        places("device.pband", "mode", "cut"));
    assertEquals(
        List.of("device.pband:40:42", "tables/output.csv:2:30", "tables/output.csv:4:15"),
        places("device.pband", "option", "reversed"));
  }

  @Test
  void everyPlaceholderInATextIsAPlace() throws IOException {
    assertEquals(
        List.of(
            "alpha.pband:17:13",
            "alpha.pband:56:31",
            "alpha.pband:56:61",
            "alpha.pband:60:28",
            "alpha.pband:95:25"),
        places("alpha.pband", "record", "found"));
  }

  /**
   * What no plan contains is named all the same: a setup that no test is in, another analyzer's.
   */
  @Test
  void unusedSetupsAndThoseForOtherAnalyzersAreNamed() throws IOException {
    String idle = "alpha.pband:44:";
    assertTrue(places("shared.pband", "lead", "red").stream().anyMatch(p -> p.startsWith(idle)));
    assertEquals(
        List.of("alpha.pband:36:44", "analyzers.pband:39:10"),
        places("analyzers.pband", "analyzer", "gauge"));
  }

  /** Whatever is written at a place is the name, with quotes around it in a cell at most. */
  @Test
  void everyPlaceHoldsItsName() throws IOException {
    for (Path root : libraries()) {
      for (Occurrence one : library(texts(root)).symbols().all()) {
        String written = one.span().text().replace("\"", "");
        boolean same = written.equals(one.symbol().text());
        assertTrue(same || one.role() == Role.FORMER, one.toString());
      }
    }
  }

  // ---- what is refused ----

  /** The place of the first declaration of a name in a file of the fixture, renamed. */
  private static List<Fix.Edit> renamed(String path, String kind, String from, String to)
      throws Exception {
    WholeLibrary library = library(texts(FIXTURE));
    Span span = declared(library, path, kind, from).span();
    return Rename.to(library, span.file(), span.start(), to);
  }

  /**
   * A rename changes what a released revision means. It is made all the same, and the revision then
   * needs a new label; an error of another kind still refuses it.
   */
  @Test
  void aReleasedRevisionDoesNotHoldANameBack() throws Exception {
    Map<String, String> texts = texts(FIXTURE);
    texts.put("released.txt", released("alpha.pband", texts));
    WholeLibrary library = library(texts);
    assertEquals("", TextReport.of(library.errors()));
    Span mode = declared(library, "device.pband", "mode", "cut").span();
    List<Fix.Edit> edits = Rename.to(library, mode.file(), mode.start(), "divide");
    List<Diagnostic> errors = library(edited(texts, edits)).errors();
    assertEquals(Set.of(Code.REVISION_REUSED), codes(errors), TextReport.of(errors));
    assertThrows(Rename.Refused.class, () -> Rename.to(library, mode.file(), mode.start(), "weld"));
  }

  private static Set<Code> codes(List<Diagnostic> errors) {
    return errors.stream().map(Diagnostic::code).collect(Collectors.toSet());
  }

  /** The record of releases with the revisions of a file's procedures. */
  private static String released(String path, Map<String, String> texts) throws IOException {
    Diagnostics found = new Diagnostics();
    Library library = new Library(DisplayPaths.prefixed("", ""), reader(texts), found);
    library.load(path);
    StringBuilder record = new StringBuilder();
    for (Plan plan : new Compiler(library, null, found).compile()) {
      String label = plan.revision().label();
      record.append(
          new ReleaseEntry(
                  plan.name().text(),
                  label,
                  "2026-01-02",
                  plan.digest(),
                  Meaning.VERSION,
                  null,
                  plan.name().span())
              .line());
      record.append('\n');
    }
    return record.toString();
  }

  private static Occurrence declared(WholeLibrary library, String path, String kind, String name) {
    for (Occurrence one : library.symbols().all()) {
      boolean here = one.declaration() && one.span().file().path().equals(path);
      if (here && one.symbol().kind().equals(kind) && one.symbol().text().equals(name)) {
        return one;
      }
    }
    throw new AssertionError("no " + kind + " " + name + " in " + path);
  }

  private static String refused(String path, String kind, String from, String to) {
    return assertThrows(Rename.Refused.class, () -> renamed(path, kind, from, to), from + " " + to)
        .getMessage();
  }

  @ParameterizedTest
  @CsvSource({
    "device.pband, device, alpha, beta",
    "device.pband, outlet, hand, foot",
    "device.pband, pole, left, right",
    "device.pband, pole, left, pedal",
    "device.pband, mode, cut, weld",
    "device.pband, setting, supply, ramp",
    "device.pband, option, normal, reversed",
    "device.pband, action, rest, standby",
    "analyzers.pband, analyzer, meter, gauge",
    "analyzers.pband, jack, high, low",
    "analyzers.pband, jack, high, key",
    "analyzers.pband, option, long, short",
    "analyzers.pband, action, window, zero",
    "shared.pband, leads, wires, keys",
    "shared.pband, lead, red, black",
    "shared.pband, rule, by-ramp, trip-point",
    "alpha.pband, procedure, alpha-output, beta-output",
    "alpha.pband, phase, as-found, as-left",
    "alpha.pband, caution, noise, burn",
    "alpha.pband, setup, hand-load, foot-load",
    "alpha.pband, test, output, weld-output",
    "alpha.pband, test, output, trim",
    "alpha.pband, section, start, alarm",
    "alpha.pband, adjust, trim, start",
    "alpha.pband, record, found, trimmed",
    "alpha.pband, record, found, intact",
    "alpha.pband, confirm, intact, lamp",
  })
  void aNameThatIsTakenIsRefused(String path, String kind, String from, String to) {
    String why = refused(path, kind, from, to);
    assertTrue(why.contains(to), why);
  }

  /** A name of another kind or another file that would be meant in the place of the old one. */
  @ParameterizedTest
  @CsvSource({
    "device.pband, setting, supply, found",
    "device.pband, setting, supply, window",
    "device.pband, setting, ramp, rest",
    "device.pband, setting, ramp, voltage",
    "device.pband, action, rest, ramp",
    "device.pband, action, rest, zero",
    "shared.pband, lead, red, yellow",
    "alpha.pband, record, found, ramp",
  })
  void aNameThatWouldMeanSomethingElseIsRefused(String path, String kind, String from, String to) {
    String why = refused(path, kind, from, to);
    assertTrue(why.contains(to), why);
  }

  @ParameterizedTest
  @CsvSource({
    "device.pband, action, select, choose-mode",
    "device.pband, action, rest, read",
    "device.pband, setting, ramp, load",
    "device.pband, setting, supply, mode",
    "device.pband, setting, ramp, current",
    "device.pband, setting, ramp, stop",
    "alpha.pband, caution, burn, heat",
    "alpha.pband, record, found, setting",
    "alpha.pband, quantity, resistance, voltage",
    "alpha.pband, test, output, 2nd",
    "alpha.pband, test, output, a b",
    "alpha.pband, test, output, a.b",
    "alpha.pband, test, output, ''",
    "alpha.pband, test, weld-output, power",
    "device.pband, mode, weld, section",
    "device.pband, outlet, foot, handle",
  })
  void aReservedOrFormerNameOrNoNameIsRefused(String path, String kind, String from, String to) {
    assertFalse(refused(path, kind, from, to).isEmpty());
  }
}
