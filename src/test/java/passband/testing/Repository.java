package passband.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** The project's own folders, as the tests see them. */
public final class Repository {
  /** The project's folder: tests are run from it. */
  public static final Path ROOT = Path.of("").toAbsolutePath();

  /** The demo library. */
  public static final Path PROCEDURES = ROOT.resolve("procedures");

  private Repository() {}

  /** Every file under a folder with this ending, in order of path. */
  public static List<Path> files(Path folder, String ending) {
    try (Stream<Path> walk = Files.walk(folder)) {
      return walk.filter(p -> Files.isRegularFile(p) && p.toString().endsWith(ending))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Copies the demo library into a folder, which may be in another file system. */
  public static void copyProcedures(Path folder) {
    try {
      for (Path file : files(PROCEDURES, "")) {
        Path copy = folder;
        for (Path part : PROCEDURES.relativize(file)) {
          copy = copy.resolve(part.toString());
        }
        Files.createDirectories(copy.getParent());
        Files.write(copy, bytes(file));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A file's bytes. */
  public static byte[] bytes(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A file's text. */
  public static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
