package passband.library;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Objects;

/** Between the paths of a file system and those of a library, with {@code /} between folders. */
public final class Paths {
  private Paths() {}

  /** A path as a library writes it. */
  public static String of(Path path) {
    return path.toString().replace(path.getFileSystem().getSeparator(), "/");
  }

  /** A path as it is found from a folder: its own where the two are on different drives. */
  public static Path from(Path folder, Path path) {
    return Objects.equals(folder.getRoot(), path.getRoot()) ? folder.relativize(path) : path;
  }

  /**
   * Whether there is such a file or folder: not where the system could not even name one so, as
   * {@code COMMIT:PATH} on Windows.
   */
  public static boolean exists(Path folder, String written) {
    try {
      return Files.exists(folder.resolve(written));
    } catch (InvalidPathException e) {
      return false;
    }
  }

  /** The folder that a file is in; absolute. */
  public static Path folder(Path file) {
    Path parent = file.toAbsolutePath().getParent();
    return Objects.requireNonNull(parent, "the top of a file system is no file");
  }

  /** The place of a library's path below a folder. */
  public static Path resolve(Path folder, String path) {
    return folder.resolve(path.replace("/", folder.getFileSystem().getSeparator()));
  }
}
