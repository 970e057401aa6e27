package passband.command;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import passband.build.Compilation;
import passband.build.CompilationUnit;
import passband.build.SourceSelection;
import passband.check.ReleaseAudit;
import passband.library.Decoder;
import passband.library.Git;
import passband.library.GitObjects;
import passband.library.Paths;
import passband.library.SourceFiles;
import passband.library.UsageException;
import passband.plan.Plan;
import passband.render.CoverageReport;
import passband.source.SourceFile;

/** {@code passband check}: finds errors. */
final class CheckCommand implements Verb {
  private final Invocation invocation;
  private Set<Path> read = Set.of();

  CheckCommand(Invocation invocation) {
    this.invocation = invocation;
  }

  @Override
  public Set<Path> read() {
    return read;
  }

  @Override
  public int run(Arguments arguments) throws UsageException, IOException {
    String form = arguments.value("--as");
    String analyzer = arguments.valueOrNull("--analyzer");
    boolean coverage = arguments.has("--coverage");
    List<CompilationUnit> units =
        SourceSelection.units(
            arguments.operands(),
            invocation.workingDirectory(),
            arguments.valueOrNull("--root"),
            analyzer);
    Progress progress = new Progress(invocation.err(), invocation.terminal(), units.size());
    boolean released = arguments.has("--released");
    Compilation<Kept> compilation =
        Compilation.each(
            units,
            analyzer,
            plan ->
                new Kept(
                    coverage ? CoverageReport.of(plan) : null, released ? procedure(plan) : null),
            progress::step);
    progress.end();
    if (released) {
      audit(arguments.operands(), compilation, arguments.valueOrNull("--since"));
    } else if (arguments.has("--since")) {
      throw new UsageException("--since belongs to --released");
    }
    read = compilation.read();
    if (coverage && form.equals("json")) {
      DiagnosticPrinter.printText(compilation.diagnostics(), invocation.err());
      invocation.out().print(CoverageReport.json(reports(compilation.procedures())));
    } else {
      DiagnosticPrinter.print(compilation.diagnostics(), form, invocation);
      PrintStream to = form.equals("text") ? invocation.out() : invocation.err();
      reports(compilation.procedures()).forEach(report -> to.print(report.text()));
    }
    return compilation.diagnostics().hasErrors() ? ExitStatus.FAULTS : ExitStatus.FINE;
  }

  private void audit(List<String> paths, Compilation<Kept> compilation, @Nullable String since)
      throws UsageException, IOException {
    List<ReleaseAudit.Procedure> procedures = new ArrayList<>();
    for (Kept one : compilation.procedures()) {
      if (one.release != null) {
        procedures.add(one.release);
      }
    }
    Map<String, SourceFile> records = records(paths, compilation);
    ReleaseAudit.run(procedures, records, compilation.diagnostics());
    if (since != null) {
      ReleaseAudit.sayLost(
          recordsAt(since, paths, compilation), records, since, compilation.diagnostics());
    }
  }

  private ReleaseAudit.Procedure procedure(Plan plan) {
    Path source = invocation.workingDirectory().resolve(plan.name().span().file().path());
    return ReleaseAudit.Procedure.of(plan, folder(source.normalize()));
  }

  private static String folder(Path file) {
    return Paths.of(Paths.folder(file));
  }

  /** The records in the folders among the paths. */
  private Map<String, SourceFile> records(List<String> paths, Compilation<Kept> compilation)
      throws IOException {
    Path here = invocation.workingDirectory();
    Map<String, SourceFile> records = new TreeMap<>();
    for (String path : paths) {
      Path folder = here.resolve(path).normalize();
      for (Path record :
          Files.isDirectory(folder) ? SourceFiles.records(folder) : List.<Path>of()) {
        String shown = Paths.of(record.startsWith(here) ? here.relativize(record) : record);
        SourceFile source =
            Decoder.decode(shown, Files.readAllBytes(record), compilation.diagnostics());
        if (source != null) {
          records.put(folder(record), source);
        }
      }
    }
    return records;
  }

  /** The records that a commit had in the same folders, by where these are on the disk. */
  private Map<String, SourceFile> recordsAt(
      String revision, List<String> paths, Compilation<Kept> compilation)
      throws UsageException, IOException {
    Path here = invocation.workingDirectory();
    Map<String, SourceFile> records = new TreeMap<>();
    try (GitObjects objects = new GitObjects(here)) {
      Git git = new Git(here, revision, objects);
      if (!git.exists()) {
        throw new UsageException("git knows no commit '" + revision + "' here");
      }
      Path top = here;
      for (String below = git.below();
          !below.isEmpty();
          below = below.substring(below.indexOf('/') + 1)) {
        top = Paths.folder(top);
      }
      for (String path : paths) {
        Path asked = here.resolve(path).normalize();
        for (String record :
            git.records(asked.equals(top) ? "" : Paths.of(top.relativize(asked)))) {
          SourceFile source =
              Decoder.decode(revision + ":" + record, git.read(record), compilation.diagnostics());
          if (source != null) {
            records.put(folder(top.resolve(record)), source);
          }
        }
      }
    }
    return records;
  }

  private static List<CoverageReport> reports(List<Kept> kept) {
    List<CoverageReport> reports = new ArrayList<>();
    for (Kept one : kept) {
      if (one.coverage != null) {
        reports.add(one.coverage);
      }
    }
    return reports;
  }

  /** What is kept of a procedure; null for what was not asked for. */
  private record Kept(
      @Nullable CoverageReport coverage, ReleaseAudit.@Nullable Procedure release) {}
}
