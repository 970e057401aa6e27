package passband.command;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.atomic.AtomicBoolean;
import passband.build.BuildRecord;
import passband.build.CompilationUnit;
import passband.build.Findings;
import passband.build.InOrder;
import passband.build.Output;
import passband.build.SourceSelection;
import passband.evidence.Evidence;
import passband.evidence.LimitsWriter;
import passband.library.BackgroundThread;
import passband.library.UsageException;
import passband.pdf.ChecklistPdf;
import passband.pdf.Paper;
import passband.plan.Plan;
import passband.render.Checklist;
import passband.render.Drawings;
import passband.render.LimitsCsv;
import passband.render.LimitsMetadata;
import passband.render.Sheet;
import passband.render.SheetMaker;

/** {@code passband build}: checks, then writes each procedure's folder. */
final class BuildCommand {
  /** What {@code --without} leaves out. */
  private static final List<String> PARTS = List.of("pdf", "pictures");

  private final Path workingDirectory;
  private final String program;
  private final PrintStream out;
  private final PrintStream err;
  private final boolean terminal;
  private final AtomicBoolean sheets = new AtomicBoolean();
  private Set<Path> read = Set.of();

  /**
   * @param program what tells this program from one that may write other bytes; null when that is
   *     not known, and then everything is compiled anew
   */
  BuildCommand(
      Path workingDirectory, String program, PrintStream out, PrintStream err, boolean terminal) {
    this.terminal = terminal;
    this.workingDirectory = workingDirectory;
    this.program = program;
    this.out = out;
    this.err = err;
  }

  /** The files that the last run read. */
  Set<Path> read() {
    return read;
  }

  int run(List<String> words) throws UsageException, IOException {
    Arguments arguments = arguments(words);
    String as = arguments.oneOf("--as", "text", CheckCommand.FORMS);
    Options options = options(arguments);
    String folder = arguments.value("--out", "out");
    List<CompilationUnit> groups = groups(arguments, options);
    Progress progress = new Progress(err, terminal, groups.size());
    Findings findings = new Findings();
    List<String> names = new ArrayList<>();
    try (Output output = Output.open(workingDirectory.resolve(folder))) {
      BuildRecord built = new BuildRecord(String.valueOf(program), options.key());
      built.read(output.record());
      InOrder.each(
          groups,
          group -> new Job(group, options, output, built).done(),
          done -> {
            progress.step();
            findings.take(done.found);
            names.addAll(done.names);
            done.lost.forEach(err::println);
          });
      progress.end();
      read = findings.read();
      CheckCommand.report(findings.diagnostics(), as, out, err, terminal);
      if (findings.diagnostics().hasErrors()) {
        err.println("nothing was written");
        return Main.FAULTS;
      }
      if (names.isEmpty()) {
        throw new UsageException(
            "there is no procedure in " + String.join(", ", arguments.paths()));
      }
      output.commit(built.written());
    }
    names.sort(null);
    names.forEach(name -> (as.equals("text") ? out : err).println(folder + "/" + name));
    String depfile = arguments.value("--depfile", null);
    if (depfile != null) {
      Files.writeString(workingDirectory.resolve(depfile), dependencies(folder, names));
    }
    return Main.FINE;
  }

  private static Arguments arguments(List<String> words) throws UsageException {
    return Arguments.of(
        words,
        Set.of("--out", "--analyzer", "--root", "--as", "--paper", "--depfile", "--without"),
        Set.of());
  }

  private List<CompilationUnit> groups(Arguments arguments, Options options)
      throws UsageException, IOException {
    return SourceSelection.units(
        arguments.paths(), workingDirectory, arguments.value("--root", null), options.analyzer);
  }

  /** The options that change what is written. */
  private record Options(Paper paper, Set<String> without, String analyzer) {
    String key() {
      return paper.name() + " " + String.join(",", without) + " " + analyzer;
    }
  }

  private static Options options(Arguments arguments) throws UsageException {
    Paper paper = Paper.named(arguments.oneOf("--paper", "a4", List.of("a4", "letter")));
    Set<String> without = new TreeSet<>();
    String list = arguments.value("--without", null);
    for (String part : list == null ? new String[0] : list.split(",")) {
      if (!PARTS.contains(part)) {
        throw new UsageException(
            "--without takes " + String.join(" and ", PARTS) + ", not '" + part + "'");
      }
      without.add(part);
    }
    return new Options(paper, without, arguments.value("--analyzer", null));
  }

  /** A rule in Make's format: the sheets depend on every file that was read. */
  private String dependencies(String folder, List<String> names) {
    StringBuilder rule = new StringBuilder();
    for (String name : names) {
      rule.append(escaped(folder + "/" + name + "/checklist.html")).append(' ');
    }
    rule.setCharAt(rule.length() - 1, ':');
    for (Path file : read) {
      Path shown = file.startsWith(workingDirectory) ? workingDirectory.relativize(file) : file;
      rule.append(" \\\n  ").append(escaped(shown.toString()));
    }
    return rule.append('\n').toString();
  }

  private static String escaped(String path) {
    return path.replace("$", "$$").replace(" ", "\\ ").replace("#", "\\#");
  }

  /**
   * What became of a group.
   *
   * @param lost what is to be said of characters that the PDF lacks
   */
  private record Done(CompilationUnit.Found found, List<String> names, List<String> lost) {}

  /** One group: compiled and written aside, or left as it stands. */
  private final class Job {
    private final CompilationUnit group;
    private final Options options;
    private final Output output;
    private final BuildRecord built;
    private final List<String> lost = new ArrayList<>();
    private final Map<String, String> written = new TreeMap<>();

    Job(CompilationUnit group, Options options, Output output, BuildRecord built) {
      this.group = group;
      this.options = options;
      this.output = output;
      this.built = built;
    }

    Done done() throws UsageException, IOException {
      BuildRecord.Entry before =
          program == null
              ? null
              : built.unchanged(group.key(), workingDirectory, output.folder(""));
      if (before != null) {
        return new Done(
            group.unchanged(before, workingDirectory),
            before.names().stream().map(BuildRecord.Name::name).toList(),
            List.of());
      }
      if (!sheets.getAndSet(true)) {
        BackgroundThread.of(Checklist::ready).start();
      }
      CompilationUnit.Compiled compiled = group.compiled(options.analyzer);
      List<String> names = new ArrayList<>();
      for (Plan plan : compiled.plans()) {
        names.add(plan.name().text());
        if (!compiled.found().diagnostics().hasErrors()) {
          write(plan);
        }
      }
      built.put(group.key(), entry(compiled.found()));
      return new Done(compiled.found(), names, lost);
    }

    /** What is kept of a group with nothing to say: what is said has to be said each time. */
    private BuildRecord.Entry entry(CompilationUnit.Found found) throws IOException {
      if (program == null || !found.silent() || !lost.isEmpty()) {
        return null;
      }
      return new BuildRecord.Entry(
          group.key(),
          BuildRecord.digests(found.consulted(), workingDirectory),
          written,
          found.names().stream()
              .map(
                  n ->
                      new BuildRecord.Name(
                          n.text(), n.span().file().path(), n.span().start(), n.span().end()))
              .toList());
    }

    private void write(Plan plan) throws IOException {
      String name = plan.name().text();
      written.putAll(output.stage(name, files(plan, options, lost)));
    }
  }

  /**
   * Every file of a procedure's folder.
   *
   * @param lost receives what is to be said of characters that the PDF lacks
   */
  private static Map<String, byte[]> files(Plan plan, Options options, List<String> lost) {
    Sheet sheet = SheetMaker.sheet(plan);
    // The PDF takes as long as all the rest: where a processor is idle it makes that.
    CompletableFuture<byte[]> pdf =
        options.without.contains("pdf")
            ? null
            : CompletableFuture.supplyAsync(() -> pdf(sheet, options, lost));
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("checklist.html", Output.bytes(Checklist.of(sheet)));
    if (!options.without.contains("pictures")) {
      Drawings.setups(sheet).forEach((name, svg) -> files.put("setups/" + name, Output.bytes(svg)));
      Drawings.limits(sheet).forEach((name, svg) -> files.put("limits/" + name, Output.bytes(svg)));
    }
    files.put("limits.csv", Output.bytes(LimitsCsv.of(plan)));
    files.put("limits.csv-metadata.json", Output.bytes(LimitsMetadata.of(plan)));
    files.put("limits.json", Output.bytes(LimitsWriter.of(Evidence.of(plan).list())));
    if (pdf != null) {
      files.put("checklist.pdf", joined(pdf));
    }
    return files;
  }

  /** What was made elsewhere; a fault there is as one here. */
  private static <T> T joined(CompletableFuture<T> made) {
    try {
      return made.join();
    } catch (CompletionException e) {
      if (e.getCause() instanceof RuntimeException runtime) {
        throw runtime;
      }
      throw e;
    }
  }

  private static byte[] pdf(Sheet sheet, Options options, List<String> lost) {
    ChecklistPdf.Printed pdf = ChecklistPdf.printed(sheet, options.paper);
    if (!pdf.lost().isEmpty()) {
      lost.add(
          "warning: "
              + sheet.head().name()
              + "/checklist.pdf prints a box for each of these, which its type does not have: "
              + String.join(" ", pdf.lost())
              + " (print checklist.html instead)");
    }
    return pdf.bytes();
  }
}
