package passband.build;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import passband.library.UnforeseenException;
import passband.library.UsageException;
import passband.plan.Plan;
import passband.render.IndexPage;
import passband.syntax.Word;

/** Builds one unit: compiles it and writes its procedures aside, or skips it as unchanged. */
final class UnitBuild {
  private final CompilationUnit unit;
  private final BuildOptions options;
  private final Path workingDirectory;
  private final Map<String, String> written = new TreeMap<>();

  /**
   * What became of the unit.
   *
   * @param names of its procedures
   * @param files its output, by path below the output folder
   */
  record Done(CompilationUnit.Found found, List<String> names, Set<String> files) {}

  UnitBuild(CompilationUnit unit, BuildOptions options, Path workingDirectory) {
    this.unit = unit;
    this.options = options;
    this.workingDirectory = workingDirectory;
  }

  /**
   * Leaves the unit's output as it is where the record says that nothing has changed; else null.
   */
  @Nullable Done unchanged(BuildRecord record, Output output) throws IOException {
    BuildRecord.Entry before = record.unchanged(unit.key(), workingDirectory, output.folder(""));
    if (before == null) {
      return null;
    }
    output.stand(before.out());
    List<String> names = new ArrayList<>();
    before.names().forEach(name -> names.add(name.name()));
    return new Done(unit.unchanged(before, workingDirectory), names, before.out().keySet());
  }

  Done done(Output output) throws UsageException, IOException {
    CompilationUnit.Compiled compiled = unit.compiled(options.analyzer());
    List<String> names = new ArrayList<>();
    for (Plan plan : compiled.plans()) {
      names.add(plan.name().text());
      if (!compiled.found().diagnostics().hasErrors()) {
        String place = "procedure '" + plan.name().text() + "'";
        ProcedureFiles made = UnforeseenException.at(place, () -> ProcedureFiles.of(plan, options));
        IndexPage.Entry about = IndexPage.Entry.of(plan, made.pages());
        written.putAll(output.stage(about, source(plan), made.files()));
      }
    }
    return new Done(compiled.found(), names, written.keySet());
  }

  private Path source(Plan plan) {
    return workingDirectory.resolve(plan.name().span().file().path()).normalize();
  }

  /**
   * What is kept of a unit with nothing to report; null for one that has: it must be reported again
   * by the next build.
   */
  BuildRecord.@Nullable Entry entry(CompilationUnit.Found found) throws IOException {
    if (!found.silent()) {
      return null;
    }
    List<BuildRecord.Name> names = new ArrayList<>();
    for (Word name : found.names()) {
      names.add(
          new BuildRecord.Name(
              name.text(), name.span().file().path(), name.span().start(), name.span().end()));
    }
    return new BuildRecord.Entry(
        unit.key(),
        BuildRecord.digests(found.consulted(), workingDirectory),
        written,
        names,
        new TreeSet<>(found.takenUp()));
  }
}
