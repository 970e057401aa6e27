package passband.library;

import java.nio.file.Path;
import java.util.Objects;

/** Between the paths of a file system and those of a library, with {@code /} between folders. */
public final class Paths {
  private Paths() {}

  /** A path as a library writes it. */
  public static String of(Path path) {
    return path.toString().replace(path.getFileSystem().getSeparator(), "/");
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
