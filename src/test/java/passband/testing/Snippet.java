package passband.testing;

import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import passband.compile.Compiler;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.TextReport;
import passband.library.DisplayPaths;
import passband.library.Library;
import passband.plan.Plan;

/** Compiles sources held in memory: one call, and what came of it. */
public record Snippet(List<Plan> plans, List<Diagnostic> diagnostics) {

  /** Compiles one source. */
  public static Snippet compile(String source) {
    return compile(Map.of("main.pband", source), "main.pband", null);
  }

  /**
   * Compiles a file among several.
   *
   * @param analyzer the analyzer to compile for; null for each procedure's own
   */
  public static Snippet compile(Map<String, String> files, String main, String analyzer) {
    Diagnostics diagnostics = new Diagnostics();
    Library library = library(files, main, diagnostics);
    List<Plan> plans = new Compiler(library, analyzer, diagnostics).compile();
    return new Snippet(plans, diagnostics.list());
  }

  /** A file among several and what it uses, read. */
  public static Library library(Map<String, String> files, String main, Diagnostics diagnostics) {
    Map<String, String> sorted = new TreeMap<>(files);
    Library library =
        new Library(
            DisplayPaths.prefixed("", ""),
            path -> {
              if (!sorted.containsKey(path)) {
                throw new NoSuchFileException(path);
              }
              return sorted.get(path).getBytes(StandardCharsets.UTF_8);
            },
            diagnostics);
    try {
      library.load(main);
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
    return library;
  }

  /** What was found, as the command prints it. */
  public String report() {
    return TextReport.of(diagnostics);
  }

  /** The codes found, in order of place. */
  public List<String> codes() {
    return diagnostics.stream().map(d -> d.code().id()).toList();
  }

  /** The one plan of a source that must be free of errors, but for those that can be allowed. */
  public Plan plan() {
    if (plans.size() != 1 || diagnostics.stream().anyMatch(d -> !d.code().allowable())) {
      throw new AssertionError(plans.size() + " plans\n" + report());
    }
    return plans.get(0);
  }
}
