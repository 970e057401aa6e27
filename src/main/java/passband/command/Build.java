package passband.command;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import passband.pdf.ChecklistPdf;
import passband.pdf.Paper;
import passband.plan.Plan;
import passband.render.Checklist;
import passband.render.Drawings;
import passband.render.LimitsCsv;
import passband.render.LimitsJson;
import passband.render.LimitsMetadata;
import passband.render.Sheet;
import passband.render.SheetMaker;

/** {@code passband build}: checks, then writes each procedure's folder. */
final class Build {
  private final Path workingDirectory;
  private final PrintStream out;
  private final PrintStream err;
  private Set<Path> read = Set.of();

  Build(Path workingDirectory, PrintStream out, PrintStream err) {
    this.workingDirectory = workingDirectory;
    this.out = out;
    this.err = err;
  }

  /** The files that the last run read. */
  Set<Path> read() {
    return read;
  }

  int run(List<String> words) throws Usage, IOException {
    Arguments arguments =
        Arguments.of(
            words,
            Set.of("--out", "--analyzer", "--root", "--as", "--paper", "--depfile"),
            Set.of());
    String as = arguments.oneOf("--as", "text", Check.FORMS);
    Paper paper = Paper.named(arguments.oneOf("--paper", "a4", List.of("a4", "letter")));
    Compilation compilation =
        Compilation.of(
            arguments.paths(),
            workingDirectory,
            arguments.value("--root", null),
            arguments.value("--analyzer", null));
    read = compilation.read();
    Check.report(compilation.diagnostics(), as, out, err);
    if (compilation.diagnostics().hasErrors()) {
      err.println("nothing was written");
      return Main.FAULTS;
    }
    if (compilation.plans().isEmpty()) {
      throw new Usage("there is no procedure in " + String.join(", ", arguments.paths()));
    }
    String folder = arguments.value("--out", "out");
    Output output = new Output(workingDirectory.resolve(folder));
    for (Plan plan : compilation.plans()) {
      output.write(plan.name().text(), files(plan, paper));
      (as.equals("text") ? out : err).println(folder + "/" + plan.name().text());
    }
    String depfile = arguments.value("--depfile", null);
    if (depfile != null) {
      Files.writeString(workingDirectory.resolve(depfile), dependencies(folder, compilation));
    }
    return Main.FINE;
  }

  /** A rule in Make's format: the sheets depend on every file that was read. */
  private String dependencies(String folder, Compilation compilation) {
    StringBuilder rule = new StringBuilder();
    for (Plan plan : compilation.plans()) {
      rule.append(escaped(folder + "/" + plan.name().text() + "/checklist.html")).append(' ');
    }
    rule.setCharAt(rule.length() - 1, ':');
    for (Path file : compilation.read()) {
      Path shown = file.startsWith(workingDirectory) ? workingDirectory.relativize(file) : file;
      rule.append(" \\\n  ").append(escaped(shown.toString()));
    }
    return rule.append('\n').toString();
  }

  private static String escaped(String path) {
    return path.replace("$", "$$").replace(" ", "\\ ").replace("#", "\\#");
  }

  /** Every file of a procedure's folder. */
  private Map<String, byte[]> files(Plan plan, Paper paper) {
    Sheet sheet = SheetMaker.sheet(plan);
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("checklist.html", Output.bytes(Checklist.of(sheet)));
    ChecklistPdf.Printed pdf = ChecklistPdf.printed(sheet, paper);
    if (!pdf.lost().isEmpty()) {
      err.println(
          "warning: "
              + plan.name().text()
              + "/checklist.pdf prints a box for each of these, which its type does not have: "
              + String.join(" ", pdf.lost())
              + " (print checklist.html instead)");
    }
    files.put("checklist.pdf", pdf.bytes());
    Drawings.setups(sheet).forEach((name, svg) -> files.put("setups/" + name, Output.bytes(svg)));
    Drawings.limits(sheet).forEach((name, svg) -> files.put("limits/" + name, Output.bytes(svg)));
    files.put("limits.csv", Output.bytes(LimitsCsv.of(plan)));
    files.put("limits.csv-metadata.json", Output.bytes(LimitsMetadata.of(plan)));
    files.put("limits.json", Output.bytes(LimitsJson.of(plan)));
    return files;
  }
}
