package passband.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.TextReport;
import passband.evidence.BadInput;
import passband.format.Formatter;
import passband.judge.Judge;
import passband.judge.LimitTable;
import passband.judge.Readings;
import passband.library.Decoder;
import passband.library.Released;
import passband.parse.Syntax;
import passband.plan.Plan;
import passband.render.Checklist;
import passband.render.JudgeReport;
import passband.source.SourceFile;
import passband.testing.Examples;
import passband.testing.Repository;

/**
 * Whatever bytes come in, nothing comes out but diagnostics and the declared exceptions, and soon.
 * With {@code JAZZER_FUZZ=1} one of these is fed mutations guided by coverage; otherwise each is
 * tried on the inputs kept in the resources.
 */
class RobustnessTest {
  private static final int LARGEST = 64 << 10;
  private static final long LONGEST_NANOS = 1_000_000_000;

  private interface Target {
    void run() throws Exception;
  }

  /** Every case of the checks and the demo library. */
  static Stream<Arguments> procedures() {
    return Stream.of("src/test/resources/cases", "procedures")
        .flatMap(folder -> Repository.files(Repository.ROOT.resolve(folder), ".pband").stream())
        .map(file -> Arguments.of((Object) Repository.bytes(file)));
  }

  static Stream<Arguments> tables() {
    return Stream.of(
            "mode,setting/W,load/ohm\nfine,20,100\n",
            "mode,setting,load/ohm,stated current/mA\nfine,20 W,100,\"400 to 500\"\n",
            "mode,setting/W,load/ohm\r\nfine,\"1, 2\",100\r\n",
            "point,reading,unit,phase,run,kind,digest\nt/bip/fine/20W/100ohm/current,447.2,mA,,1,,ab\n",
            "gen-output A 2026-10-02 0123456789abcdef\n# a comment\n")
        .map(text -> Arguments.of((Object) text.getBytes(StandardCharsets.UTF_8)));
  }

  private static final Path BUILT = Repository.ROOT.resolve("out/fescue-300-service");
  private static final LimitTable LIMITS = limitTable();

  private static LimitTable limitTable() {
    try {
      return LimitTable.parse(Repository.text(BUILT.resolve("limits.json")));
    } catch (BadInput e) {
      throw new IllegalStateException(e);
    }
  }

  static Stream<Arguments> limitTables() {
    return Stream.of("limits.json", "limits.csv")
        .map(name -> Arguments.of((Object) Repository.bytes(BUILT.resolve(name))));
  }

  /** Runs a target on an input of at most 64 KiB, which may take a second. */
  private static void quick(byte[] data, Target target) throws Exception {
    if (data.length > LARGEST) {
      return;
    }
    long best = Long.MAX_VALUE;
    for (int i = 0; i < 3 && best > LONGEST_NANOS; i++) {
      long start = System.nanoTime();
      target.run();
      best = Math.min(best, System.nanoTime() - start);
    }
    assertTrue(best <= LONGEST_NANOS, best / 1_000_000 + " ms for " + data.length + " bytes");
  }

  /** A target that may refuse its input, in a message that a person can read. */
  private static Target refusing(Target target) {
    return () -> {
      try {
        target.run();
      } catch (BadInput e) {
        assertTrue(e.getMessage().length() < 10_000, e.getMessage());
      }
    };
  }

  @MethodSource("procedures")
  @FuzzTest(maxDuration = "5m")
  void lexerAndParser(byte[] data) throws Exception {
    quick(
        data,
        () -> {
          Diagnostics found = new Diagnostics();
          SourceFile source = Decoder.decode("main.pband", data, found);
          if (source != null) {
            Syntax.parse(source, found);
          }
          TextReport.of(found.list());
        });
  }

  @MethodSource("procedures")
  @FuzzTest(maxDuration = "5m")
  void compiler(byte[] data) throws Exception {
    quick(data, () -> TextReport.of(Examples.compile(data).diagnostics()));
  }

  /** What compiles is printed, and lays out to the same meaning. */
  @MethodSource("procedures")
  @FuzzTest(maxDuration = "5m")
  void sheetAndFormatter(byte[] data) throws Exception {
    quick(
        data,
        () -> {
          var snippet = Examples.compile(data);
          if (snippet.diagnostics().stream().anyMatch(Diagnostic::isError)) {
            return;
          }
          snippet.plans().forEach(Checklist::of);
          String text = new String(data, StandardCharsets.UTF_8);
          String laid = Formatter.format(new SourceFile("main.pband", text), new Diagnostics());
          assertEquals(
              snippet.plans().stream().map(Plan::digest).toList(),
              Examples.compile(laid.getBytes(StandardCharsets.UTF_8)).plans().stream()
                  .map(Plan::digest)
                  .toList());
        });
  }

  private static final String WITH_TABLE =
      Examples.framed(
          "test",
          """
            test t "T" {
              outlet bip
              setup  bipolar
              accept power from output, read as current
              table from "rows.csv"
            }
          """);

  @MethodSource("tables")
  @FuzzTest(maxDuration = "5m")
  void table(byte[] data) throws Exception {
    quick(
        data,
        () ->
            TextReport.of(
                Examples.compile(WITH_TABLE.getBytes(StandardCharsets.UTF_8), data).diagnostics()));
  }

  @MethodSource("tables")
  @FuzzTest(maxDuration = "5m")
  void readings(byte[] data) throws Exception {
    quick(
        data,
        refusing(
            () -> {
              Readings readings = Readings.parse(new String(data, StandardCharsets.UTF_8));
              JudgeReport.text(Judge.judge(LIMITS, readings, "2026-10-02"));
            }));
  }

  @MethodSource("limitTables")
  @FuzzTest(maxDuration = "5m")
  void limits(byte[] data) throws Exception {
    quick(
        data,
        refusing(
            () -> {
              LimitTable table = LimitTable.parse(new String(data, StandardCharsets.UTF_8));
              Readings readings =
                  Readings.parse(
                      "point,reading,unit\n"
                          + (table.points().isEmpty() ? "x" : table.points().get(0).id())
                          + ",12.5,mA\n");
              JudgeReport.text(Judge.judge(table, readings, "2026-10-02"));
            }));
  }

  @MethodSource("tables")
  @FuzzTest(maxDuration = "5m")
  void releases(byte[] data) throws Exception {
    quick(
        data,
        () -> {
          Diagnostics found = new Diagnostics();
          SourceFile record = Decoder.decode("released.txt", data, found);
          if (record != null) {
            Released.parse(record, found);
          }
          TextReport.of(found.list());
        });
  }

  /** 64 KiB of what a parser or planner finds hardest. */
  static Stream<String> hard() {
    String head = Examples.framed("test", "%%%");
    String test =
        "test t \"T\" {\n outlet bip\n setup bipolar\n accept power at most %s\n"
            + " table {\n mode | setting/W | load/ohm\n %s }\n}\n";
    String row = "fine | 20 | 100\n";
    String deep = "(".repeat(20_000) + "1 W" + ")".repeat(20_000);
    String wide = "1 W" + " + 1 W".repeat(9_000);
    return Stream.of(
        "{".repeat(65_000),
        "}".repeat(65_000),
        "procedure p {\n".repeat(4_500),
        "test t {\n".repeat(6_000),
        "\"".repeat(65_000),
        "# ".repeat(32_000),
        "1,".repeat(32_000),
        "a.".repeat(32_000),
        "use \"x.pband\"\n".repeat(4_500),
        "device d {\n" + "outlet o, ".repeat(6_000) + "\n}\n",
        "device d {\n" + "mode m on o {\n}\n".repeat(3_500) + "}\n",
        "leads l {\n" + "lead a, rated 1 kV\n".repeat(3_300) + "}\n",
        "\uD83D\uDE00".repeat(16_000),
        "\u00e9\u00b1 ".repeat(13_000),
        head.replace("%%%", test.formatted(deep, row)),
        head.replace("%%%", test.formatted(wide, row)),
        head.replace("%%%", test.formatted("1e" + "9".repeat(60_000) + " W", row)),
        head.replace("%%%", test.formatted("sqrt(".repeat(90) + "1 W" + ")".repeat(90), row)),
        head.replace("%%%", test.formatted("setting ^ 9 ^ 9 ^ 9", row)),
        head.replace("%%%", test.formatted("2 ^ 99999999 * 1 W", row)),
        head.replace("%%%", test.formatted("30 W", row.repeat(3_500))),
        head.replace(
            "%%%", test.formatted("30 W", "fine | " + "20, ".repeat(15_000) + "20 | 100\n")),
        head.replace(
            "%%%", test.formatted("30 W", "fine | 1 to 20 step 0.0001 | 50 to 500 step 0.01\n")),
        head.replace("%%%", test.formatted("30 W", "fine | 1 to 1e60 step 1e-60 | 100\n")),
        head.replace("%%%", test.formatted("30 W", "| ".repeat(30_000) + "\n")),
        head.replace("%%%", "section s \"S\" {\n" + "do \"{x}\"\n".repeat(7_000) + "}\n"),
        head.replace("%%%", "allow x because \"y\"\n".repeat(2_900)));
  }

  @ParameterizedTest
  @MethodSource("hard")
  void hardInputsAreAnsweredWithinASecond(String text) throws Exception {
    byte[] data = text.getBytes(StandardCharsets.UTF_8);
    assertTrue(data.length <= LARGEST, data.length + " bytes");
    quick(data, () -> TextReport.of(Examples.compile(data).diagnostics()));
  }
}
