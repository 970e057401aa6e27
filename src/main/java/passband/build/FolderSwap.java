package passband.build;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Set;
import passband.library.Paths;
import passband.library.UsageException;

/**
 * Moves a procedure's new folder into the place of the old one. What lies in the old one and was
 * not written by Passband goes along; where it is in the way, the build is refused.
 */
final class FolderSwap {
  private final Path out;
  private final WrittenFiles written;

  /**
   * @param written what builds before this one wrote
   */
  FolderSwap(Path out, WrittenFiles written) {
    this.out = out;
    this.written = written;
  }

  /**
   * Refuses a build that would replace what Passband did not write.
   *
   * @param files the paths to write, below the output folder
   */
  void check(String procedure, Set<String> files) throws UsageException, IOException {
    // A copy of an output folder may lack the record; its limits tell whose it is.
    boolean own =
        !written.of(procedure).isEmpty() || OutputFolder.isOf(procedure, out.resolve(procedure));
    for (String file : files) {
      for (int i = file.indexOf('/'); i >= 0; i = file.indexOf('/', i + 1)) {
        Path folder = Paths.resolve(out, file.substring(0, i));
        if (OutputFolder.exists(folder) && !OutputFolder.isFolder(folder)) {
          throw inTheWay(folder, "a folder of Passband's has to be here, and this is none");
        }
      }
      Path path = Paths.resolve(out, file);
      if (OutputFolder.exists(path) && !Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS)) {
        throw inTheWay(path, "a file of Passband's has to be here, and this is a folder or a link");
      } else if (OutputFolder.exists(path) && !own) {
        throw inTheWay(path, "Passband did not write this file and does not replace it");
      }
    }
  }

  private static UsageException inTheWay(Path path, String reason) {
    return new UsageException(
        path + ": " + reason + "; nothing was written (move it away, or name another --out)");
  }

  /**
   * Replaces a procedure's folder.
   *
   * @param fresh the new one
   * @param before where the old one is kept meanwhile
   */
  void replace(String procedure, Path fresh, Path before) throws IOException {
    Path target = out.resolve(procedure);
    if (!OutputFolder.exists(target)) {
      Files.move(fresh, target);
      return;
    }
    Path old = before.resolve(procedure);
    Files.move(target, old);
    try {
      Files.move(fresh, target);
    } catch (IOException e) {
      Files.move(old, target);
      throw e;
    }
    keep(old, procedure);
  }

  /**
   * Takes an old folder away: what Passband wrote is deleted, all else moved to where it was.
   *
   * @param path where it was, below the output folder
   */
  void keep(Path old, String path) throws IOException {
    Path target = Paths.resolve(out, path);
    boolean shared = OutputFolder.isFolder(target) || written.madeFolder(path);
    if (OutputFolder.isFolder(old) && shared) {
      for (Path below : OutputFolder.in(old)) {
        keep(below, path + "/" + OutputFolder.name(below));
      }
      Files.delete(old);
    } else if (OutputFolder.exists(target) || written.asWritten(path, old)) {
      Files.delete(old);
    } else {
      Files.createDirectories(Paths.folder(target));
      Files.move(old, target);
    }
  }
}
