package passband.build;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.library.UnforeseenException;
import passband.library.UsageException;
import passband.plan.Plan;
import passband.plan.Profile;
import passband.source.Span;

/**
 * The compiled procedures of a command line's paths, and what was found in them.
 *
 * @param <R> what is kept of a procedure
 * @param procedures in order of name, or of their files where names are not asked for
 * @param declared what the files that are named declare besides procedures, each once
 * @param read every file that was read, in order of path
 */
public record Compilation<R>(
    List<R> procedures, List<Profile> declared, Diagnostics diagnostics, Set<Path> read) {

  /** Loads and compiles; {@code root} and {@code analyzer} are null where none is given. */
  public static Compilation<Plan> of(
      List<String> paths, Path workingDirectory, @Nullable String root, @Nullable String analyzer)
      throws UsageException, IOException {
    Compilation<Plan> compilation =
        each(
            SourceSelection.units(paths, workingDirectory, root, analyzer),
            analyzer,
            plan -> plan,
            () -> {},
            true);
    compilation.procedures.sort(Comparator.comparing(p -> p.name().text()));
    return compilation;
  }

  /**
   * Compiles group by group, on every processor, and keeps of each procedure only what {@code made}
   * makes of it, so that a library of any size fits into memory; nothing of what is declared beside
   * procedures. {@code step} is told of each group.
   */
  public static <R> Compilation<R> each(
      List<CompilationUnit> groups,
      @Nullable String analyzer,
      InOrder.Work<Plan, R> made,
      Runnable step)
      throws UsageException, IOException {
    return each(groups, analyzer, made, step, false);
  }

  private static <R> Compilation<R> each(
      List<CompilationUnit> groups,
      @Nullable String analyzer,
      InOrder.Work<Plan, R> made,
      Runnable step,
      boolean profiles)
      throws UsageException, IOException {
    List<R> kept = new ArrayList<>();
    Map<Span, Profile> declared = new LinkedHashMap<>();
    Findings findings = new Findings();
    InOrder.each(
        groups,
        group -> UnforeseenException.at(group.place(), () -> done(group, analyzer, made, profiles)),
        done -> {
          step.run();
          findings.take(done.found);
          kept.addAll(done.results);
          done.declared.forEach(one -> declared.putIfAbsent(one.name().span(), one));
        });
    return new Compilation<>(
        kept, List.copyOf(declared.values()), findings.diagnostics(), findings.read());
  }

  private static <R> Done<R> done(
      CompilationUnit group,
      @Nullable String analyzer,
      InOrder.Work<Plan, R> made,
      boolean profiles)
      throws UsageException, IOException {
    CompilationUnit.Compiled compiled = group.compiled(analyzer);
    List<R> results = new ArrayList<>();
    for (Plan plan : compiled.plans()) {
      results.add(made.of(plan));
    }
    List<Profile> declared = profiles ? compiled.declared().get() : List.of();
    return new Done<>(compiled.found(), declared, results);
  }

  private record Done<R>(CompilationUnit.Found found, List<Profile> declared, List<R> results) {}
}
