package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import passband.build.Compilation;
import passband.build.CompilationUnit;
import passband.build.SourceSelection;
import passband.library.UnforeseenException;
import passband.testing.Repository;

/** Whatever fails, a command ends with status 2 and a line that a person understands. */
class LastHandlerTest {
  private static final String OUTPUT = "procedures/teasel/teasel-output.pband";

  @TempDir Path work;
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  @BeforeEach
  void copyLibrary() throws IOException {
    Repository.copy(Repository.LIBRARY, work.resolve("procedures"));
  }

  private int run(OutputStream out, String... words) {
    return Main.run(
        new Invocation(work, new PrintStream(out, false), printed(), 0, null, false),
        List.of(words));
  }

  private PrintStream printed() {
    err.reset();
    return new PrintStream(err, true, StandardCharsets.UTF_8);
  }

  private String said() {
    return err.toString(StandardCharsets.UTF_8);
  }

  /** A stream that fails at each write. */
  private static OutputStream failing(RuntimeException failure) {
    return new OutputStream() {
      @Override
      public void write(int b) throws IOException {
        if (failure != null) {
          throw failure;
        }
        throw new IOException("No space left on device");
      }
    };
  }

  /** A call of each command that prints something. */
  static Stream<List<String>> calls() {
    Map<String, List<String>> arguments = new HashMap<>();
    arguments.put("readings", List.of("limits.json"));
    arguments.put("record", List.of("limits.json", "2025-01-01.csv"));
    arguments.put("verify", List.of("records/r.json"));
    arguments.put("fleet", List.of("records"));
    arguments.put("detect", List.of(OUTPUT));
    arguments.put("transcribe", List.of("table.csv"));
    arguments.putAll(
        Map.of(
            "check", List.of("--coverage", OUTPUT),
            "build", List.of(OUTPUT, "--without", "pdf,pictures"),
            "format", List.of("loose.pband"),
            "steps", List.of(OUTPUT),
            "diff", List.of("procedures", "changed"),
            "release", List.of(OUTPUT, "--by", "A. Ward", "--on", "2026-11-02"),
            "judge", List.of("limits.json", "2025-01-01.csv"),
            "history", List.of("limits.json", "2025-01-01.csv", "2026-01-01.csv"),
            "editor", List.of("textmate"),
            "completion", List.of("fish")));
    return CommandTable.names().stream()
        .filter(name -> !name.equals("server")) // it speaks to an editor, not to a person
        .map(
            name ->
                Stream.concat(Stream.of(name), arguments.getOrDefault(name, List.of()).stream()))
        .map(Stream::toList);
  }

  private void prepare() throws IOException {
    Repository.copy(Repository.LIBRARY, work.resolve("changed"));
    Path changed = work.resolve("changed/teasel/teasel-output.pband");
    Files.writeString(changed, Files.readString(changed).replace("410 to 500", "420 to 490"));
    Files.writeString(work.resolve("table.csv"), "power/W,load/ohm,limits/mA\n10,100,291 to 339\n");
    Files.writeString(work.resolve("loose.pband"), "device   d \"D\" {\n}\n");
    run(OutputStream.nullOutputStream(), "build", OUTPUT, "-o", "before");
    Files.copy(work.resolve("before/teasel-output/limits.json"), work.resolve("limits.json"));
    for (String date : List.of("2025-01-01", "2026-01-01")) {
      Files.writeString(
          work.resolve(date + ".csv"),
          "point,reading,unit,kind\nsheet/generator-serial,S 1,,record\nsheet/date,"
              + date
              + ",,record\n");
    }
    ByteArrayOutputStream record = new ByteArrayOutputStream();
    run(record, "record", "limits.json", "2025-01-01.csv");
    Files.createDirectories(work.resolve("records"));
    Files.write(work.resolve("records/r.json"), record.toByteArray());
  }

  // ---- what is printed does not arrive ----

  @ParameterizedTest
  @MethodSource("calls")
  void aFullDiskIsStatusTwo(List<String> words) throws IOException {
    prepare();
    assertEquals(2, run(failing(null), words.toArray(new String[0])), said());
    assertEquals(
        "passband: cannot write to the standard output: the pipe is closed or the disk is full",
        said().lines().reduce((first, last) -> last).orElse(""));
  }

  @Test
  void whereEvenThisCannotBeSaidTheStatusTells() {
    PrintStream full = new PrintStream(failing(null));
    PrintStream broken = new PrintStream(failing(new IllegalStateException("no")));
    for (PrintStream stream : List.of(full, broken)) {
      Invocation invocation =
          new Invocation(
              work, new PrintStream(OutputStream.nullOutputStream()), stream, 0, null, false);
      assertEquals(2, Main.run(invocation, List.of("check", "nowhere")));
    }
  }

  /** A process of its own whose output goes to a full device or to a reader that has gone. */
  @Test
  void aRealFullDeviceAndARealClosedPipe() throws Exception {
    Path full = Path.of("/dev/full");
    assertTrue(Files.exists(full), "this needs the device that is always full");
    Process process =
        started("version").redirectOutput(full.toFile()).redirectError(errors()).start();
    assertStatusTwo(process);
    process = started("version").redirectError(errors()).start();
    process.getInputStream().close();
    assertStatusTwo(process);
    process = started("check", "nowhere").redirectError(full.toFile()).start();
    assertEquals(2, process.waitFor());
  }

  private java.io.File errors() {
    return work.resolve("stderr.txt").toFile();
  }

  private ProcessBuilder started(String... words) {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    List<String> line =
        Stream.concat(
                Stream.of(
                    java,
                    "-XX:TieredStopAtLevel=1",
                    "-cp",
                    System.getProperty("java.class.path"),
                    "passband.command.Main"),
                Stream.of(words))
            .toList();
    return new ProcessBuilder(line).directory(work.toFile());
  }

  private void assertStatusTwo(Process process) throws Exception {
    assertTrue(process.waitFor(60, TimeUnit.SECONDS));
    assertEquals(2, process.exitValue());
    assertEquals(
        "passband: cannot write to the standard output: the pipe is closed or the disk is full\n",
        Files.readString(errors().toPath()));
  }

  // ---- faults of the program ----

  @ParameterizedTest
  @MethodSource("calls")
  void aFaultOfTheProgramIsOneLine(List<String> words) throws IOException {
    prepare();
    OutputStream broken = failing(new IllegalStateException("of\n\tthe\nprogram"));
    assertEquals(2, run(broken, words.toArray(new String[0])), said());
    String line = said().lines().reduce((first, last) -> last).orElse("");
    assertTrue(line.startsWith("passband: '" + words.get(0) + "' failed"), said());
    assertTrue(line.contains("IllegalStateException (of the program) in "), said());
    assertTrue(line.endsWith("This is a fault of Passband; please report it."), said());
    assertFalse(said().contains("\tat "), said());
  }

  /** A failure in the compiler is told with the file that it was at. */
  @Test
  void theFileThatWasWorkedOnIsNamed() throws Exception {
    List<CompilationUnit> units = SourceSelection.units(List.of("procedures"), work, null, null);
    for (Throwable fault :
        List.of(new NullPointerException(), new StackOverflowError(), new OutOfMemoryError())) {
      UnforeseenException failure =
          assertThrows(
              UnforeseenException.class,
              () -> Compilation.each(units, null, plan -> fail(fault), () -> {}));
      String line = LastHandler.line("check", failure);
      assertTrue(line.contains(" while working on procedures/sundew/sundew-energy.pband"), line);
      assertEquals(1, line.lines().count());
    }
    String memory =
        LastHandler.line(
            "build",
            assertThrows(
                UnforeseenException.class,
                () -> UnforeseenException.at("a.pband", () -> fail(new OutOfMemoryError()))));
    assertEquals(
        "passband: 'build' ran out of memory while working on a.pband; set"
            + " JAVA_TOOL_OPTIONS=-Xmx4g to allow more",
        memory);
  }

  private static <T> T fail(Throwable fault) {
    if (fault instanceof Error error) {
      throw error;
    }
    throw (RuntimeException) fault;
  }

  @Test
  void whatTheDiskRefusesIsNoFaultOfTheProgram() {
    UncheckedIOException gone = new UncheckedIOException(new NoSuchFileException("x.pband"));
    assertEquals("passband: there is no x.pband", LastHandler.line("check", gone));
    assertEquals(
        "passband: there is no x.pband",
        LastHandler.line(
            "check",
            assertThrows(
                UnforeseenException.class, () -> UnforeseenException.at("y", () -> fail(gone)))));
    assertEquals(2, run(OutputStream.nullOutputStream(), "check", "a\0b"));
    assertEquals("passband: 'a?b' is not a valid path\n", said());
  }

  /** An editor that says nonsense gets no stack trace either. */
  @Test
  void theServerSaysNoStackTrace() throws Exception {
    Process process = started("server").redirectError(errors()).start();
    try (OutputStream in = process.getOutputStream()) {
      in.write("Content-Length: 9\r\n\r\n{\"x\": [[]".getBytes(StandardCharsets.UTF_8));
      in.write("Content-Length: x\r\n\r\n".getBytes(StandardCharsets.UTF_8));
    }
    assertTrue(process.waitFor(60, TimeUnit.SECONDS));
    String said = Files.readString(errors().toPath());
    assertFalse(said.contains("\tat "), said);
  }
}
