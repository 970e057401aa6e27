package passband.edit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import passband.command.HelpText;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.format.Formatter;
import passband.judge.Cause;
import passband.judge.CauseManual;
import passband.judge.ReadingColumn;
import passband.parse.CursorContext;
import passband.quantity.QuantityKind;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.render.FleetReport;
import passband.source.SourceFile;
import passband.testing.Repository;
import passband.testing.Snippet;
import passband.transcribe.TableFault;
import passband.transcribe.Transcript;

/**
 * The guide's example compiles and is answered as printed; the reference is made from the language
 * and the demo library. Run with {@code -Dgolden.write=true} to write the reference anew.
 */
class GuideTest {
  private static final Path DOCS = Repository.ROOT.resolve("src/docs");

  private static List<String> fenced(String text, String info) {
    List<String> blocks = new ArrayList<>();
    Matcher fence =
        Pattern.compile("(?ms)^```" + Pattern.quote(info) + "\\n(.*?)^```$").matcher(text);
    while (fence.find()) {
      blocks.add(fence.group(1));
    }
    return blocks;
  }

  /** What `check` says in the guide, without its last line, which counts. */
  private static String warning(String guide) {
    String said = fenced(guide, "text").get(1);
    return said.substring(0, said.lastIndexOf('\n', said.length() - 2) + 1);
  }

  @Test
  void theGuidesProcedureCompilesAndIsAnsweredAsPrinted() {
    String guide = Repository.text(DOCS.resolve("guide.md"));
    String source = String.join("\n", fenced(guide, "pband sallow.pband"));
    Snippet snippet = Snippet.compile(Map.of("sallow.pband", source), "sallow.pband", null);
    assertEquals(warning(guide), snippet.report());
    assertEquals(6, snippet.plan().limits().size());
    assertEquals(
        source,
        Formatter.format(new SourceFile("sallow.pband", source), new Diagnostics()),
        "the guide's example is in the one layout");
    String allow = guide.lines().filter(l -> l.startsWith("+    allow ")).findFirst().orElseThrow();
    String quiet =
        source.replaceFirst(
            "(accept power from output, read as current\\n)",
            "$1" + Matcher.quoteReplacement(allow.substring(1)) + "\n");
    assertEquals("", Snippet.compile(Map.of("sallow.pband", quiet), "sallow.pband", null).report());
  }

  /** With the rest of the visit, put where the guide says. */
  @Test
  void theRestOfTheVisitCompiles() {
    String guide = Repository.text(DOCS.resolve("guide.md"));
    String rest = String.join("\n", fenced(guide, "pband visit"));
    String procedure = String.join("\n", fenced(guide, "pband sallow.pband"));
    String before = "  test grip-output \"Grip\" {";
    assertTrue(procedure.contains(before));
    String source = procedure.replace(before, rest + "\n" + before);
    Snippet snippet = Snippet.compile(Map.of("sallow.pband", source), "sallow.pband", null);
    assertEquals(
        warning(guide).replaceAll("sallow.pband:[0-9]+", "line"),
        snippet.report().replaceAll("sallow.pband:[0-9]+", "line"));
    assertEquals(14, snippet.plan().limits().size());
    assertEquals(
        source, Formatter.format(new SourceFile("sallow.pband", source), new Diagnostics()));
  }

  /** The table's transcript is the guide's; {@code -Dgolden.write=true} writes it. */
  @Test
  void theTableIsTranscribedAsPrinted() throws IOException, TableFault {
    Path page = DOCS.resolve("guide.md");
    String guide = Repository.text(page);
    Transcript transcript =
        Transcript.of(
            fenced(guide, "csv manual.csv").get(0).getBytes(StandardCharsets.UTF_8),
            false,
            "manual",
            "manual",
            "2026-11-20");
    String printed = transcript.text() + "written: manual.pband\n";
    if (Boolean.getBoolean("golden.write")) {
      String block = "```transcribe\n" + fenced(guide, "transcribe").get(0) + "```";
      Files.writeString(page, guide.replace(block, "```transcribe\n" + printed + "```"));
      return;
    }
    assertEquals(printed, fenced(guide, "transcribe").get(0));
    assertEquals(5, Snippet.compile(transcript.source()).plan().limits().size());
  }

  @Test
  void everyPictureAndLinkIsThere() {
    for (String page : List.of("guide.md", "reference.md")) {
      Matcher link =
          Pattern.compile("\\]\\(([^)#:]+)\\)").matcher(Repository.text(DOCS.resolve(page)));
      int links = 0;
      while (link.find()) {
        assertTrue(Files.exists(DOCS.resolve(link.group(1))), page + ": " + link.group(1));
        links++;
      }
      assertTrue(links > 0, page);
    }
  }

  // ---- the reference ----

  /** The first line in the demo library that a word leads in a block, with its file. */
  private static Map<String, String> examples() {
    Map<String, String> examples = new TreeMap<>();
    for (Path file : Repository.files(Repository.PROCEDURES, ".pband")) {
      SourceFile source = new SourceFile("x", Repository.text(file));
      for (int line = 1; line <= source.lineCount(); line++) {
        String text = source.line(line).strip();
        Matcher word = Pattern.compile("[a-z-]+").matcher(text);
        if (!word.lookingAt()) {
          continue;
        }
        CursorContext place = CursorContext.at(source, source.lineStart(line));
        LanguageLine explained = LanguageLine.find(place.block(), word.group());
        if (explained != null && place.header() == null) {
          examples.putIfAbsent(
              explained.block() + " " + explained.word(),
              "`"
                  + text.replaceFirst("\\s*\\{$", " {").replaceAll("\\s+", " ").replace("|", "\\|")
                  + "` in "
                  + "["
                  + file.getFileName()
                  + "](../../procedures/"
                  + Repository.PROCEDURES.relativize(file)
                  + ")");
        }
      }
    }
    return examples;
  }

  private static String escaped(String text) {
    return text.replace("|", "\\|");
  }

  private static String reference() {
    StringBuilder page = new StringBuilder();
    page.append(
        """
        # Reference

        Generated from the language's own tables and from the library in `procedures/`; the tests compile every file of it.
        For a first procedure, step by step, see [guide.md](guide.md).

        ## Lines

        Every line begins with a word that its block defines; a `{` at the end of a line opens a block. Words in capitals are yours to
        fill in, `[ ]` encloses optional parts, and `…` means more of the same.
        """);
    Map<String, String> examples = examples();
    String block = "";
    for (LanguageLine line : LanguageLine.all()) {
      if (!line.block().equals(block)) {
        block = line.block();
        page.append("\n### In ").append(title(block)).append("\n\n");
        if (List.of("device", "outlet", "mode").contains(block)) {
          page.append("A line that begins with a quantity is a bound, `QUANTITY LIMIT`, such as");
          page.append(" `peak-voltage at most 250 V`; see [Limits](#limits).\n\n");
        }
        page.append("| line | purpose | example |\n| --- | --- | --- |\n");
      }
      page.append("| `" + escaped(line.form()) + "` | " + escaped(line.purpose()) + " | ");
      page.append(examples.getOrDefault(line.block() + " " + line.word(), "")).append(" |\n");
    }
    forms(page);
    decisions(page);
    quantities(page);
    units(page);
    codes(page);
    causes(page);
    readings(page);
    limits(page);
    fleets(page);
    commands(page);
    return page.toString();
  }

  private static String title(String block) {
    return switch (block) {
      case "file" -> "a file";
      case "analyzer", "outlet" -> "an `" + block + "`";
      case "leads", "tests", "setups" -> "`" + block + "`";
      case "steps" -> "lists of steps: `section`, `adjust`, `before`, `each`, `after`";
      default -> "a `" + block + "`";
    };
  }

  private static void forms(StringBuilder page) {
    page.append("\n## Forms\n\nWhat is written inside the lines.\n");
    String group = "";
    for (LanguageForm form : LanguageForm.all()) {
      if (!form.group().equals(group)) {
        group = form.group();
        page.append("\n### " + group + "\n\n| form | meaning | example |\n| --- | --- | --- |\n");
      }
      String example = escaped(form.example().replace("\\n", " ").replaceAll(" +", " "));
      page.append("| `" + escaped(form.form()) + "` | " + escaped(form.meaning()));
      page.append(" | `" + example + "` |\n");
    }
  }

  private static void decisions(StringBuilder page) {
    page.append(
        """

        ## How limits are made

        1. The rule, or the mode's output, gives exact limits; no number is rounded on the way.
        2. Where another quantity is read, they are converted through the load R of the row: I = √(P/R), U = √(P·R).
        3. The first range of the instrument that holds both limits and the nominal value gives error and resolution. The standard
           uncertainty u(x) is the root of ((s·x + f)² + (l·x)² + (d/2)²)/3: s and f are the share and the fixed part of the instrument's
           error, l the share by which the load's error moves the reading, d the resolution (JCGM 100, 4.3.7, 5.1.2, F.2.2.1).
           An error that is not rectangular is divided by 6 where it is triangular, by 2 where it is U-shaped, by the square of
           its coverage factor where it is normal.
        4. `decision simple` compares with the limits themselves. `decision guarded` moves each limit L inward by k·u(L); k is 2, or what
           `coverage` says. `decision risk N %` moves it by the factor of u that leaves a chance
           of N % that a value on L is accepted (JCGM 106). `decision managed` moves it by the managed guard band of ANSI/NCSL
           Z540.3, method 6: with TUR the ratio of the tolerance and U = 2·u, by U·(1.04 − exp(0.38·ln TUR − 0.54)), and not at
           all from a TUR of 4.59 on. It keeps the probability of accepting what does not conform below 2 %, whatever share
           conforms. Where there is no ratio, and for a derived value, it is U.
        5. Where an error says its `degrees-of-freedom`, those of u follow by Welch and Satterthwaite, rounded down to a whole
           number (JCGM 100, G.4.1), and the factor of u by Student's t: the one that leaves outside what k, or N %, leaves outside
           of a normal distribution. With k = 2, that is 95.45 %, and 10 degrees of freedom it is 2.28. More than 200 count as
           200. An error that says none has infinitely many; one known to a quarter of itself has about 8, to a tenth about 50
           (G.4.2).
        6. Both ends are rounded once, inward, to the resolution: a reading on a limit passes.

        A derived value is guarded at the readings, so its guard band is known only then. Its u follows from its formula's
        sensitivities to what is read (JCGM 100, 5.1.2): of the first order, so that a formula far from a straight line over its
        readings' uncertainties has more (in the example H.1 34 nm instead of 32). How far an instrument's error is the same in
        several readings is not known. Of each that readings in one unit, range and load share, and of a load's error at that
        load, what gives the greatest U is taken, not at all or wholly, which a ratio or a difference does not gain from; the
        resolution is never shared. In `mean(A) over repeat` the readings' scatter counts too: s/√n with n − 1 degrees of freedom (4.2), and
        with its covariance where several quantities are read each time (5.2.3). A single reading's scatter nobody knows; where
        it matters, repeat the reading and accept the mean.

        With `prior N %`, the share of generators expected in tolerance before the test, `judge` says the global consumer's and producer's risk of the rule (JCGM 106, 9.5),
        the greatest over the readings with two limits; it moves no limit.
        """);
  }

  private static void quantities(StringBuilder page) {
    page.append(
        "\n## Quantities\n\nPeak and RMS belong to the quantity, never to the unit; a quantity without `peak-` is RMS.\n\n");
    page.append("| name | dimension | negative values |\n| --- | --- | --- |\n");
    for (String name : QuantityKind.names()) {
      QuantityKind kind = QuantityKind.find(name);
      page.append(
          "| `"
              + name
              + "` | "
              + kind.dimension()
              + " | "
              + (kind.nonNegative() ? "impossible" : "possible")
              + " |\n");
    }
  }

  private static void units(StringBuilder page) {
    page.append(
        "\n## Units\n\nUnits are case-sensitive. Machine-readable files use the UCUM codes.\n\n");
    page.append(
        "| written | printed | in SI | dimension | UCUM |\n| --- | --- | --- | --- | --- |\n");
    for (Unit unit : Units.all()) {
      if (!unit.symbol().isEmpty()) {
        page.append(
            "| `"
                + unit.symbol()
                + "` | "
                + unit.printed()
                + " | "
                + unit.factor().toPlain()
                + " | "
                + unit.dimension()
                + " | `"
                + unit.ucum()
                + "` |\n");
      }
    }
  }

  private static void codes(StringBuilder page) {
    page.append(
        "\n## Errors and warnings\n\n`passband explain CODE` explains each, with an example and its fix. `allow` lets warnings"
            + " stand, and errors unless allowed; its reason must not be empty.\n\n| code | severity | meaning |\n| --- | --- | --- |\n");
    for (Code code : Code.values()) {
      page.append(
          "| [`"
              + code.id()
              + "`](../main/resources/passband/explain/"
              + code.id()
              + ".md) | "
              + code.weight()
              + " | "
              + code.title()
              + " |\n");
    }
  }

  private static void causes(StringBuilder page) {
    page.append(
        "\n## Causes of verdicts\n\nThe sheet in a browser and `passband judge` give the same verdict on every item, for the"
            + " same causes. Only pass is a pass: an item that is unclear or not done makes the whole incomplete."
            + "\n\n| cause | effect | sentence | meaning |\n| --- | --- | --- | --- |\n");
    for (Cause.Code code : Cause.Code.values()) {
      CauseManual.Entry entry = CauseManual.entry(code);
      page.append("| `" + code.word() + "` | " + entry.effect() + " | " + code.pattern());
      page.append(" | " + entry.meaning() + " |\n");
    }
  }

  private static void readings(StringBuilder page) {
    page.append(
        "\n## Columns of the readings\n\n`passband judge`, `passband history` and the page's 'Load a file' read the same tables:"
            + " cells between commas, semicolons or tabs, in UTF-8 or UTF-16, in any order of the columns. A column with"
            + " another name, in other letters, or that stands twice is an error."
            + "\n\n| column | use | contents |\n| --- | --- | --- |\n");
    for (ReadingColumn column : ReadingColumn.values()) {
      page.append("| `" + column.word() + "` | " + column.use().word());
      page.append(" | " + column.purpose() + " |\n");
    }
  }

  private static void limits(StringBuilder page) {
    page.append(
        "\n## Columns of limits.csv and limits.xlsx\n\nOne row for each reading and derived value; `limits.csv-metadata.json`"
            + " says the same for programs.\n\n| column | contents |\n| --- | --- |\n");
    String metadata =
        Repository.text(Repository.ROOT.resolve("out/tussock-4-output/limits.csv-metadata.json"));
    for (JsonElement one :
        JsonParser.parseString(metadata)
            .getAsJsonObject()
            .getAsJsonObject("tableSchema")
            .getAsJsonArray("columns")) {
      JsonObject column = one.getAsJsonObject();
      String name = column.get("name").getAsString();
      String description = column.get("dc:description").getAsString();
      page.append("| `" + name + "` | " + description + " |\n");
    }
  }

  private static final Map<String, String> FLEET =
      Map.ofEntries(
          Map.entry("device", "Generator, as the records name it"),
          Map.entry("serial", "Serial number of the generator"),
          Map.entry("procedure", "Name of the procedure of the last visit, or of this one"),
          Map.entry("revision", "Its revision"),
          Map.entry("visits", "How many records of this generator there are"),
          Map.entry("last", "Date of the last visit (YYYY-MM-DD)"),
          Map.entry("date", "Date of the visit (YYYY-MM-DD)"),
          Map.entry("result", "Overall verdict of that visit"),
          Map.entry("due", "Date of the next visit: the last and --interval days"),
          Map.entry("overdue", "'yes' where that day is before --date, else 'no'"),
          Map.entry("record", "File of the record"));

  private static void fleets(StringBuilder page) {
    page.append("\n## Columns of fleet\n\n`passband fleet --as csv` has a row for each generator");
    page.append(", with `--instrument` one for each visit in which that was used.\n\n");
    page.append("| column | generators | `--instrument` | contents |\n| --- | --- | --- | --- |\n");
    Set<String> all = new LinkedHashSet<>(FleetReport.COLUMNS);
    all.addAll(FleetReport.USES_COLUMNS);
    assertEquals(FLEET.keySet(), all);
    for (String column : all) {
      page.append("| `" + column + "` | " + (FleetReport.COLUMNS.contains(column) ? "yes" : ""));
      page.append(" | " + (FleetReport.USES_COLUMNS.contains(column) ? "yes" : "") + " | ");
      page.append(FLEET.get(column) + " |\n");
    }
  }

  private static void commands(StringBuilder page) {
    page.append("\n## Commands\n\n`passband help COMMAND` prints these texts.\n");
    for (String command : HelpText.commands()) {
      page.append("\n### " + command + "\n\n```\n" + HelpText.of(command) + "```\n");
    }
  }

  @Test
  void theReferenceIsUpToDate() throws IOException {
    Path file = DOCS.resolve("reference.md");
    if (Boolean.getBoolean("golden.write")) {
      Files.writeString(file, reference());
    }
    assertEquals(
        reference(), Repository.text(file), "stale: run the tests with -Dgolden.write=true");
  }

  /** The library shows every kind of line that there is; in 'tests' they are those of a test. */
  @Test
  void theLibraryShowsTheWholeLanguage() {
    Map<String, String> examples = examples();
    List<String> missing =
        LanguageLine.all().stream()
            .filter(l -> !l.word().equals("allow") || l.block().equals("test"))
            .filter(l -> !l.block().equals("tests") || l.word().matches("test|table|accept|setup"))
            .map(l -> l.block() + " " + l.word())
            .filter(l -> !examples.containsKey(l))
            .toList();
    assertEquals(List.of(), missing);
  }
}
