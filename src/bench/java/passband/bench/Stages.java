package passband.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import passband.compile.Compiler;
import passband.diagnostic.Diagnostics;
import passband.diff.PlanDiff;
import passband.evidence.Evidence;
import passband.evidence.ItemList;
import passband.evidence.LimitsWriter;
import passband.format.Formatter;
import passband.library.DisplayPaths;
import passband.library.Library;
import passband.parse.Syntax;
import passband.pdf.ChecklistPdf;
import passband.pdf.Paper;
import passband.plan.Plan;
import passband.render.Checklist;
import passband.render.LimitsCsv;
import passband.render.Sheet;
import passband.render.SheetMaker;
import passband.source.SourceFile;

/**
 * The stages of a build, one at a time and warm, on {@code teasel-output} of the tests' library: 33
 * limits, four files.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(
    value = 1,
    jvmArgsAppend = {"-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1"})
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
public class Stages {
  private static final Path LIBRARY = Path.of("src/test/resources/library");
  private static final String MAIN = "teasel/teasel-output.pband";

  private SourceFile source;
  private Plan plan;
  private Sheet sheet;

  /** What the stages after another begin with. */
  @Setup
  public void prepare() throws IOException {
    source = new SourceFile(MAIN, new String(read(MAIN), StandardCharsets.UTF_8));
    plan = compile().get(0);
    sheet = SheetMaker.sheet(plan);
  }

  private static byte[] read(String path) throws IOException {
    return Files.readAllBytes(LIBRARY.resolve(path));
  }

  /** Text to tree, one file. */
  @Benchmark
  public Object parse() {
    return Syntax.parse(source, new Diagnostics());
  }

  /** Four files to a plan with its limits, all checks made. */
  @Benchmark
  public List<Plan> compile() throws IOException {
    Diagnostics found = new Diagnostics();
    Library library = new Library(DisplayPaths.prefixed("", ""), Stages::read, found);
    library.load(MAIN);
    return new Compiler(library, null, found).compile();
  }

  /** A plan to a sheet. */
  @Benchmark
  public Sheet sheet() {
    return SheetMaker.sheet(plan);
  }

  /** A sheet to HTML. */
  @Benchmark
  public String html() {
    return Checklist.of(sheet);
  }

  /** A sheet to PDF. */
  @Benchmark
  public byte[] pdf() {
    return ChecklistPdf.printed(sheet, Paper.A4).bytes();
  }

  /** A plan to both limit tables. */
  @Benchmark
  public int limits() {
    ItemList list = Evidence.of(plan).list();
    return LimitsCsv.of(list).length() + LimitsWriter.of(list).length();
  }

  /** A plan held against another. */
  @Benchmark
  public Object diff() {
    return PlanDiff.between(List.of(plan), List.of(plan));
  }

  /** A text laid out. */
  @Benchmark
  public String format() {
    return Formatter.format(source, new Diagnostics());
  }
}
