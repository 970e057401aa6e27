package passband.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.TextReport;
import passband.evidence.BadInput;
import passband.evidence.Evidence;
import passband.evidence.ItemList;
import passband.evidence.LimitsReader;
import passband.evidence.LimitsWriter;
import passband.format.Formatter;
import passband.judge.Judge;
import passband.judge.Readings;
import passband.library.Decoder;
import passband.library.Released;
import passband.parse.Syntax;
import passband.plan.Plan;
import passband.render.Checklist;
import passband.render.JudgeReport;
import passband.source.SourceFile;
import passband.testing.Examples;
import passband.testing.HardInputs;
import passband.testing.Repository;
import passband.testing.Sheets;

/**
 * Whatever bytes come in, nothing comes out but diagnostics and the declared exceptions. With
 * {@code JAZZER_FUZZ=1} one of these is fed mutations guided by coverage; otherwise each is tried
 * on the inputs kept in the resources.
 */
class RobustnessTest {
  private static final int LARGEST = 64 << 10;

  private interface Target {
    void run() throws Exception;
  }

  /** Every case of the checks, the library of the tests and the demo. */
  static Stream<Arguments> procedures() {
    return Stream.of("src/test/resources/cases", "src/test/resources/library", "procedures")
        .flatMap(folder -> Repository.files(Repository.ROOT.resolve(folder), ".pband").stream())
        .map(file -> Arguments.of((Object) Repository.bytes(file)));
  }

  static Stream<Arguments> tables() {
    return Stream.of(
            "mode,setting/W,load/ohm\nthin,20,100\n",
            "mode,setting,load/ohm,stated current/mA\nthin,20 W,100,\"400 to 500\"\n",
            "mode,setting/W,load/ohm\r\nthin,\"1, 2\",100\r\n",
            "point,reading,unit,phase,attempt,kind,digest\nt/bip/thin/20W/100ohm/current,447.2,mA,,1,,ab\n",
            "gen-output A 2026-10-02 0123456789abcdef\n# a comment\n")
        .map(text -> Arguments.of((Object) text.getBytes(StandardCharsets.UTF_8)));
  }

  private static final ItemList LIMITS = limits();

  private static ItemList limits() {
    try {
      return LimitsReader.read(LimitsWriter.of(Evidence.of(Sheets.YARROW).list()));
    } catch (BadInput e) {
      throw new IllegalStateException(e);
    }
  }

  static Stream<Arguments> limitTables() {
    return Stream.of(LimitsWriter.of(Evidence.of(Sheets.YARROW).list()))
        .map(text -> Arguments.of((Object) text.getBytes(StandardCharsets.UTF_8)));
  }

  /** Runs a target on an input of at most 64 KiB; one that never ends is stopped. */
  private static void bounded(byte[] data, Target target) {
    if (data.length <= LARGEST) {
      assertTimeoutPreemptively(Duration.ofMinutes(2), target::run);
    }
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
    bounded(
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
    bounded(data, () -> TextReport.of(Examples.compile(data).diagnostics()));
  }

  /** What compiles is printed, and lays out to the same meaning. */
  @MethodSource("procedures")
  @FuzzTest(maxDuration = "5m")
  void sheetAndFormatter(byte[] data) throws Exception {
    bounded(
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
    bounded(
        data,
        () ->
            TextReport.of(
                Examples.compile(WITH_TABLE.getBytes(StandardCharsets.UTF_8), data).diagnostics()));
  }

  @MethodSource("tables")
  @FuzzTest(maxDuration = "5m")
  void readings(byte[] data) throws Exception {
    bounded(
        data,
        refusing(
            () -> {
              Readings readings = Readings.parse(data);
              JudgeReport.text(Judge.judge(LIMITS, readings, "2026-10-02"));
            }));
  }

  @MethodSource("limitTables")
  @FuzzTest(maxDuration = "5m")
  void limits(byte[] data) throws Exception {
    bounded(
        data,
        refusing(
            () -> {
              ItemList list = LimitsReader.read(new String(data, StandardCharsets.UTF_8));
              Readings readings =
                  Readings.parse(
                      ("point,reading,unit\n"
                              + (list.items().isEmpty() ? "x" : list.items().get(0).id())
                              + ",12.5,mA\n")
                          .getBytes(StandardCharsets.UTF_8));
              JudgeReport.text(Judge.judge(list, readings, "2026-10-02"));
            }));
  }

  @MethodSource("tables")
  @FuzzTest(maxDuration = "5m")
  void releases(byte[] data) throws Exception {
    bounded(
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

  static Stream<Arguments> hard() {
    return HardInputs.TEXTS.entrySet().stream()
        .map(text -> Arguments.of(Named.of(text.getKey(), text.getValue())));
  }

  @ParameterizedTest
  @MethodSource("hard")
  void hardInputsAreAnswered(String text) throws Exception {
    byte[] data = text.getBytes(StandardCharsets.UTF_8);
    assertTrue(data.length <= LARGEST, data.length + " bytes");
    bounded(data, () -> TextReport.of(Examples.compile(data).diagnostics()));
  }
}
