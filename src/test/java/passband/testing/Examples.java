package passband.testing;

import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import passband.check.ReleaseAudit;
import passband.compile.Compiler;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Explanations;
import passband.library.DisplayPaths;
import passband.library.Library;
import passband.plan.Meaning;
import passband.plan.Plan;
import passband.source.SourceFile;

/**
 * Puts an example of the manual into the frame that its kind stands for, on the manual's bench, and
 * compiles it.
 */
public final class Examples {
  /**
   * What an example for something else need not do: cover its device, use every setup of the frame.
   */
  private static final Set<Code> ASIDE =
      EnumSet.of(Code.MODE_UNTESTED, Code.OUTLET_UNTESTED, Code.SETTING_UNTESTED, Code.UNUSED_NAME);

  private static final String TEST_FRAME =
      """
      use "bench.pband"
      procedure example "Example" {
        revision "A" on 2026-01-31
        device gen
        analyzer meter
        leads set
        caution burn "Output burns."
        setup bipolar "Bipolar" {
          connect red   from outlet.left   to analyzer.high
          connect black from outlet.right  to analyzer.low
          connect grey  from outlet.switch to analyzer.key
        }
      %s
      }
      """;

  private static final String PROCEDURE_FRAME =
      """
      use "bench.pband"
      procedure example "Example" {
      %s
      }
      """;

  private Examples() {}

  /**
   * The text of a whole file.
   *
   * @param kind {@code file} (also {@code latin-1}), {@code procedure} or {@code test}
   */
  public static String framed(String kind, String text) {
    return switch (kind) {
      case "file", "latin-1" -> text + "\n";
      case "procedure" -> PROCEDURE_FRAME.replace("%s", text);
      case "test" -> TEST_FRAME.replace("%s", text);
      default -> throw new IllegalArgumentException("no frame for " + kind);
    };
  }

  /** Compiles an example. */
  public static Snippet compile(String kind, String text) {
    byte[] main =
        framed(kind, text)
            .getBytes(
                kind.equals("latin-1") ? StandardCharsets.ISO_8859_1 : StandardCharsets.UTF_8);
    return compile(main);
  }

  /** Compiles a whole file on the manual's bench. */
  public static Snippet compile(byte[] main) {
    return compile(main, "mode,setting/W,load/ohm\nthin,20,100\n".getBytes(StandardCharsets.UTF_8));
  }

  /** The same with a table, {@code rows.csv}, beside it. */
  public static Snippet compile(byte[] main, byte[] rows) {
    String record = record(main);
    if (record.contains(" now ")) {
      List<Plan> plans = compiled(main, rows, "").plans();
      String digest = plans.isEmpty() ? "0".repeat(64) : plans.get(0).digest();
      record = record.replace(" now ", " " + digest + " ");
    }
    return compiled(main, rows, record);
  }

  private static Snippet compiled(byte[] main, byte[] rows, String record) {
    Diagnostics diagnostics = new Diagnostics();
    Library library =
        new Library(
            DisplayPaths.prefixed("", ""),
            path -> {
              if (path.equals("released.txt") && record.isEmpty()) {
                throw new NoSuchFileException(path);
              }
              return switch (path) {
                case "main.pband" -> main;
                case "bench.pband" -> Explanations.bench().getBytes(StandardCharsets.UTF_8);
                case "empty.csv" -> new byte[0];
                case "released.txt" -> record.getBytes(StandardCharsets.UTF_8);
                case "rows.csv" -> rows;
                default -> throw new NoSuchFileException(path);
              };
            },
            diagnostics);
    try {
      library.load("main.pband");
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
    List<Plan> plans = new Compiler(library, null, diagnostics).compile();
    if (new String(main, StandardCharsets.UTF_8).contains("# check --released")) {
      ReleaseAudit.run(
          plans.stream().map(plan -> ReleaseAudit.Procedure.of(plan, "")).toList(),
          record.isEmpty() ? Map.of() : Map.of("", new SourceFile("released.txt", record)),
          diagnostics);
    }
    return new Snippet(plans, diagnostics.list());
  }

  /**
   * The record of releases that a text gives in comments, {@code # released: …}, {@code meaning
   * now} for today's version of the meaning and {@code now} for its digest (zeros if it does not
   * compile); empty without.
   */
  private static String record(byte[] main) {
    return new String(main, StandardCharsets.UTF_8)
        .lines()
        .filter(l -> l.strip().startsWith("# released: "))
        .map(l -> l.strip().substring("# released: ".length()) + "\n")
        .map(l -> l.replace("meaning now", "meaning " + Meaning.VERSION))
        .collect(Collectors.joining());
  }

  /** What was found, but for what an example about another code need not do. */
  public static List<Diagnostic> relevant(Snippet snippet, Code about) {
    return snippet.diagnostics().stream()
        .filter(d -> d.code() == about || !ASIDE.contains(d.code()))
        .toList();
  }

  /** Codes that cannot come without another: the same fault seen from its other side. */
  public static List<String> companions(Code code) {
    return switch (code) {
      case ONE_POINT_LIMITS -> List.of("accuracy-ratio-low");
      default -> List.of();
    };
  }
}
