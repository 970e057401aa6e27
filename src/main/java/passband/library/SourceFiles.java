package passband.library;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** Finds the sources in a folder. */
public final class SourceFiles {
  /** How the name of a source ends. */
  public static final String EXTENSION = ".pband";

  private SourceFiles() {}

  /** The sources in a folder and in those below it, hidden ones left out; in order of path. */
  public static List<Path> in(Path folder) throws IOException {
    return in(folder, below -> false, name -> name.endsWith(EXTENSION));
  }

  /** The records of releases in a folder and in those below it, likewise. */
  public static List<Path> records(Path folder) throws IOException {
    return in(folder, below -> false, Released.NAME::equals);
  }

  /** The sources of one library: those below its root, without folders that are roots again. */
  public static List<Path> ofLibrary(Path root) throws IOException {
    return in(root, LibraryRoot::marked, name -> name.endsWith(EXTENSION));
  }

  private static List<Path> in(Path folder, Predicate<Path> left, Predicate<String> wanted)
      throws IOException {
    List<Path> found = new ArrayList<>();
    Path real = folder.toRealPath(); // it may be a link itself; none below it is followed
    Files.walkFileTree(
        real,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult preVisitDirectory(Path entered, BasicFileAttributes attributes) {
            boolean skipped =
                !entered.equals(real) && (name(entered).startsWith(".") || left.test(entered));
            return skipped ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
            if (wanted.test(name(file)) && Files.isRegularFile(file)) {
              found.add(folder.resolve(real.relativize(file)));
            }
            return FileVisitResult.CONTINUE;
          }
        });
    found.sort(null);
    return found;
  }

  private static String name(Path path) {
    return path.getFileName().toString();
  }
}
