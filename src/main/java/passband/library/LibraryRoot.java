package passband.library;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Function;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * Which folder is the root of the library that a file belongs to: no {@code use} leads out of it.
 *
 * <p>One rule, for the command, the editor and git: the folder that is given; else the nearest one
 * at or above the file that is marked; else the working folder, where it holds the file; else the
 * folder that the file is in.
 */
public final class LibraryRoot {
  /** A file of this name marks its folder as a root, whatever is in the file. */
  public static final String MARKER = "passband.library";

  /** A folder of git's, or in a linked work tree a file, marks the top of a work tree. */
  public static final String GIT = ".git";

  private LibraryRoot() {}

  /** Whether a folder is marked as a root. */
  public static boolean marked(Path folder) {
    return Files.isRegularFile(folder.resolve(MARKER)) || Files.exists(folder.resolve(GIT));
  }

  /**
   * The rule without a given root, for any kind of folder.
   *
   * @param start the folder that the file is in
   * @param parent the folder above one; null at the top
   * @param otherwise the root where no folder is marked
   */
  public static <F> F of(
      F start, Function<F, @Nullable F> parent, Predicate<F> marked, F otherwise) {
    for (@Nullable F folder = start; folder != null; folder = parent.apply(folder)) {
      if (marked.test(folder)) {
        return folder;
      }
    }
    return otherwise;
  }

  /**
   * The root on a disk. A folder above holds the file only when it also does so with all symbolic
   * links followed.
   *
   * @param start the folder that the file is in; absolute
   * @param workingDirectory absolute
   * @param own the root where nothing is marked and the working folder does not hold the file
   */
  public static Path of(Path start, Path workingDirectory, Path own) {
    boolean held = start.startsWith(workingDirectory) && holds(workingDirectory, start);
    return of(
        start,
        Path::getParent,
        folder -> marked(folder) && holds(folder, start),
        held ? workingDirectory : own);
  }

  /**
   * Says that something is not in a library.
   *
   * @param root the root's name; empty where it has none
   */
  public static String outside(String what, String root) {
    String named = root.isEmpty() ? "" : " " + root;
    return "'" + what + "' is outside the library root" + named + " (set it with --root)";
  }

  /** Whether a folder holds another, or is the same, with all symbolic links followed. */
  public static boolean holds(Path folder, Path below) {
    try {
      return real(below).startsWith(folder.toRealPath());
    } catch (IOException e) {
      return false; // it cannot be looked into
    }
  }

  /** A folder with its links followed, as far as it is there. */
  private static Path real(Path folder) throws IOException {
    Path parent = folder.getParent();
    return parent == null || Files.exists(folder)
        ? folder.toRealPath()
        : real(parent).resolve(folder.getFileName());
  }
}
