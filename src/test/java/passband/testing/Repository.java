package passband.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** The project's own folders, as the tests see them. */
public final class Repository {
  /** The project's folder: tests are run from it. */
  public static final Path ROOT = Path.of("").toAbsolutePath();

  /** The demo library, which may change at any time: no test depends on its names or figures. */
  public static final Path PROCEDURES = ROOT.resolve("procedures");

  /**
   * The library of the tests: two procedures, their generators, two analyzers and leads. Tests name
   * what is in it and change its texts.
   */
  public static final Path LIBRARY = ROOT.resolve("src/test/resources/library");

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

  /** Every file of a library, by its path within. */
  public static Map<String, String> texts(Path library) {
    Map<String, String> texts = new TreeMap<>();
    for (Path file : files(library, "")) {
      texts.put(library.relativize(file).toString().replace('\\', '/'), text(file));
    }
    return texts;
  }

  /** Copies a library into a folder, which may be in another file system. */
  public static void copy(Path library, Path folder) {
    try {
      for (Path file : files(library, "")) {
        Path copy = folder;
        for (Path part : library.relativize(file)) {
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
