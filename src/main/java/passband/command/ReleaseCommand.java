package passband.command;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import passband.build.Compilation;
import passband.diagnostic.Diagnostics;
import passband.library.Decoder;
import passband.library.Released;
import passband.library.UsageException;
import passband.plan.Meaning;
import passband.plan.Plan;
import passband.source.SourceFile;
import passband.source.Span;

/** {@code passband release}: adds what the procedures mean now to the record beside them. */
final class ReleaseCommand implements Verb {
  private static final String HEAD =
      "# Released revisions with the digests of their meaning; written by 'passband release', enforced by 'passband check'.\n";

  private final Invocation invocation;
  private final PrintStream out;

  ReleaseCommand(Invocation invocation) {
    this.invocation = invocation;
    this.out = invocation.out();
  }

  @Override
  public int run(Arguments arguments) throws UsageException, IOException {
    Compilation<Plan> compilation =
        Compilation.of(
            arguments.operands(),
            invocation.workingDirectory(),
            arguments.valueOrNull("--root"),
            null);
    DiagnosticPrinter.print(compilation.diagnostics(), "text", invocation);
    if (compilation.diagnostics().hasErrors()) {
      invocation.err().println("nothing was released");
      return ExitStatus.FAULTS;
    }
    if (compilation.procedures().isEmpty()) {
      throw new UsageException(
          "there is no procedure in " + String.join(", ", arguments.operands()));
    }
    for (Plan plan : compilation.procedures()) {
      release(plan);
    }
    return ExitStatus.FINE;
  }

  private void release(Plan plan) throws UsageException, IOException {
    Path source = invocation.workingDirectory().resolve(plan.name().span().file().path());
    Path record = source.resolveSibling(Released.NAME);
    boolean fresh = !Files.exists(record);
    Span nowhere = plan.name().span();
    Released.Entry entry =
        new Released.Entry(
            plan.name().text(),
            plan.revision().label(),
            plan.revision().date(),
            plan.digest(),
            Meaning.VERSION,
            nowhere);
    Released.Entry known = fresh ? null : released(record).find(entry.procedure(), entry.label());
    if (known != null && known.meaning() == Meaning.VERSION) {
      out.println("already released: " + entry.line());
      return;
    }
    String was = fresh ? HEAD : Files.readString(record);
    String end = was.isEmpty() || was.endsWith("\n") ? "" : "\n";
    String now = was + end + entry.line() + "\n";
    WholeFile.write(record, now.getBytes(StandardCharsets.UTF_8));
    out.println("released: " + entry.line());
  }

  private static Released released(Path record) throws UsageException, IOException {
    Diagnostics none = new Diagnostics();
    SourceFile source = Decoder.decode(Released.NAME, Files.readAllBytes(record), none);
    if (source == null) {
      throw new UsageException(record + " is not valid UTF-8");
    }
    return Released.parse(source, none);
  }
}
