package passband.bench;

import java.nio.charset.StandardCharsets;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import passband.diagnostic.TextReport;
import passband.testing.Examples;
import passband.testing.HardInputs;

/**
 * The texts of 64 KiB that a parser or planner finds hardest, all of them compiled once. Goal: the
 * slowest single one within a second, so the whole within as many seconds as there are texts.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgsAppend = "-XX:+UseSerialGC")
@Warmup(iterations = 1)
@Measurement(iterations = 3)
public class Hostile {

  /** Compiles every text and reports what was found; prints the slowest. */
  @Benchmark
  public int all() {
    long slowest = 0;
    String which = "";
    int printed = 0;
    for (var text : HardInputs.TEXTS.entrySet()) {
      byte[] data = text.getValue().getBytes(StandardCharsets.UTF_8);
      long start = System.nanoTime();
      printed += TextReport.of(Examples.compile(data).diagnostics()).length();
      long took = System.nanoTime() - start;
      if (took > slowest) {
        slowest = took;
        which = text.getKey();
      }
    }
    System.out.printf("slowest: %s, %d ms%n", which, TimeUnit.NANOSECONDS.toMillis(slowest));
    return printed;
  }
}
