package passband.build;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicBoolean;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.library.BackgroundThread;
import passband.library.UnforeseenException;
import passband.library.UsageException;
import passband.render.Checklist;

/** Compiles units and writes a folder for each of their procedures, all of them or none. */
public final class ProcedureBuild {
  private final Path workingDirectory;
  private final @Nullable String program;
  private final BuildOptions options;
  private final AtomicBoolean sheets = new AtomicBoolean();

  /**
   * What a build came to.
   *
   * @param names of the procedures, in order
   * @param warnings besides the diagnostics, one line each
   * @param files what these builds wrote, by path below the output folder: now, or before where
   *     nothing has changed
   * @param read every file that was read
   */
  public record Result(
      Diagnostics diagnostics,
      List<String> names,
      List<String> warnings,
      Set<String> files,
      Set<Path> read) {
    /** Whether the procedures were written. */
    public boolean written() {
      return !diagnostics.hasErrors() && !names.isEmpty();
    }
  }

  /**
   * @param program identifies this program among others that may write other bytes; null when it is
   *     not known, and then nothing counts as unchanged
   */
  public ProcedureBuild(Path workingDirectory, @Nullable String program, BuildOptions options) {
    this.workingDirectory = workingDirectory;
    this.program = program;
    this.options = options;
  }

  /**
   * Builds.
   *
   * @param folder where the procedures' folders go
   * @param waits told before it waits for another build of that folder
   * @param step told of each unit that is done
   */
  public Result run(List<CompilationUnit> units, Path folder, Runnable waits, Runnable step)
      throws UsageException, IOException {
    Findings findings = new Findings();
    List<String> names = new ArrayList<>();
    List<String> warnings = new ArrayList<>();
    Set<String> files = new TreeSet<>(Set.of(LibraryPage.NAME));
    try (Output output = Output.open(folder, waits)) {
      BuildRecord record = new BuildRecord(String.valueOf(program), options.key());
      record.read(output.record());
      InOrder.each(
          units,
          unit -> UnforeseenException.at(unit.place(), () -> built(unit, output, record)),
          done -> {
            step.run();
            findings.take(done.found());
            names.addAll(done.names());
            files.addAll(done.files());
          });
      names.sort(null);
      Result result = new Result(findings.diagnostics(), names, warnings, files, findings.read());
      if (result.written()) {
        OutputFolder.refuseRead(folder, result.read());
        warnings.addAll(output.commit(record.written(), Set.copyOf(names), gone(result.read())));
      }
      return result;
    }
  }

  /** With an analyzer of the command line files are read whose procedures are not looked at. */
  private GoneOutput gone(Set<Path> read) {
    return new GoneOutput(
        options.prune(), source -> options.analyzer() == null && read.contains(source));
  }

  private UnitBuild.Done built(CompilationUnit unit, Output output, BuildRecord record)
      throws UsageException, IOException {
    UnitBuild build = new UnitBuild(unit, options, workingDirectory);
    UnitBuild.Done unchanged = program == null ? null : build.unchanged(record, output);
    if (unchanged != null) {
      return unchanged;
    }
    if (!sheets.getAndSet(true)) {
      BackgroundThread.of(Checklist::ready).start();
    }
    UnitBuild.Done done = build.done(output);
    record.put(unit.key(), program == null ? null : build.entry(done.found()));
    return done;
  }
}
