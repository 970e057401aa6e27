package passband.library;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

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

  /**
   * The place of what somebody wrote; null where no file of this system can have such a name.
   *
   * @param folder from which a relative path goes
   */
  public static @Nullable Path resolveWritten(Path folder, String written) {
    try {
      return resolve(folder, written);
    } catch (InvalidPathException e) {
      return null;
    }
  }

  /**
   * A file's path from a folder, as a library writes it; on another drive or share the whole path.
   */
  public static String from(Path folder, Path file) {
    boolean together = Objects.equals(folder.getRoot(), file.getRoot());
    return of(together ? folder.relativize(file) : file);
  }
}
