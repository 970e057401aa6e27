package passband.command;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import passband.diagnostic.Diagnostics;
import passband.format.Formatter;
import passband.library.Paths;
import passband.library.SourceFiles;
import passband.library.UsageException;
import passband.source.SourceFile;

/** {@code passband format}: the one layout. */
final class FormatCommand {
  private final Path workingDirectory;
  private final PrintStream out;
  private final PrintStream err;

  FormatCommand(Path workingDirectory, PrintStream out, PrintStream err) {
    this.workingDirectory = workingDirectory;
    this.out = out;
    this.err = err;
  }

  int run(List<String> words) throws UsageException, IOException {
    Arguments arguments = Arguments.of(words, Set.of(), Set.of("--check"));
    if (arguments.paths().isEmpty()) {
      throw new UsageException("no file or folder is named");
    }
    boolean check = arguments.has("--check");
    Diagnostics diagnostics = new Diagnostics();
    boolean differs = false;
    for (Path file : files(arguments.paths())) {
      differs |= format(file, check, diagnostics);
    }
    CheckCommand.report(diagnostics, "text", out, err);
    return diagnostics.hasErrors() || (check && differs) ? Main.FAULTS : Main.FINE;
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
    SourceFile source = passband.library.Decoder.decode(shown, was, diagnostics);
    String laid = source == null ? null : Formatter.format(source, diagnostics);
    if (laid == null || java.util.Arrays.equals(was, laid.getBytes(StandardCharsets.UTF_8))) {
      return false;
    }
    out.println(shown);
    if (!check) {
      Path fresh = Files.createTempFile(file.toAbsolutePath().getParent(), ".new-", ".pband");
      try {
        Files.write(fresh, laid.getBytes(StandardCharsets.UTF_8));
        Files.copy(fresh, file, StandardCopyOption.REPLACE_EXISTING);
      } finally {
        Files.deleteIfExists(fresh);
      }
    }
    return true;
  }
}
