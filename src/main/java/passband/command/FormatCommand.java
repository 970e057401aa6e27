package passband.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import passband.diagnostic.Diagnostics;
import passband.format.Formatter;
import passband.library.Decoder;
import passband.library.Paths;
import passband.library.SourceFiles;
import passband.library.UnforeseenException;
import passband.library.UsageException;
import passband.source.SourceFile;

/** {@code passband format}: the one layout. */
final class FormatCommand implements Verb {
  private final Invocation invocation;
  private final Path workingDirectory;

  FormatCommand(Invocation invocation) {
    this.invocation = invocation;
    this.workingDirectory = invocation.workingDirectory();
  }

  @Override
  public int run(Arguments arguments) throws UsageException, IOException {
    boolean check = arguments.has("--check");
    Diagnostics diagnostics = new Diagnostics();
    boolean differs = false;
    for (Path file : files(arguments.operands())) {
      differs |= UnforeseenException.at(file.toString(), () -> format(file, check, diagnostics));
    }
    DiagnosticPrinter.print(diagnostics, "text", invocation);
    return diagnostics.hasErrors() || (check && differs) ? ExitStatus.FAULTS : ExitStatus.FINE;
  }

  private Set<Path> files(List<String> paths) throws UsageException, IOException {
    Set<Path> files = new TreeSet<>();
    for (String path : paths) {
      Path given = workingDirectory.resolve(path).normalize();
      if (!Files.exists(given)) {
        throw new UsageException("there is no file or folder " + path);
      }
      files.addAll(Files.isDirectory(given) ? SourceFiles.in(given) : List.of(given));
    }
    return files;
  }

  /** Whether the file is not in the one layout. */
  private boolean format(Path file, boolean check, Diagnostics diagnostics) throws IOException {
    String shown =
        Paths.of(file.startsWith(workingDirectory) ? workingDirectory.relativize(file) : file);
    byte[] was = Files.readAllBytes(file);
    SourceFile source = Decoder.decode(shown, was, diagnostics);
    String laid = source == null ? null : Formatter.format(source, diagnostics);
    if (laid == null || Arrays.equals(was, laid.getBytes(StandardCharsets.UTF_8))) {
      return false;
    }
    if (!check) {
      WholeFile.write(file, laid.getBytes(StandardCharsets.UTF_8));
    }
    invocation.out().println(shown);
    return true;
  }
}
