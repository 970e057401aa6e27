package passband.command;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;

/** Files are replaced whole or not at all: a full disk must not cost what was in them. */
final class WholeFile {
  private WholeFile() {}

  /**
   * Writes a file beside its place and moves it there. One that is replaced keeps its permissions,
   * and a link keeps leading to it.
   *
   * @throws IOException with the file's name; it is then what it was
   */
  static void write(Path file, byte[] bytes) throws IOException {
    Path target = Files.exists(file) ? file.toRealPath() : file;
    if (Files.exists(target) && !Files.isWritable(target)) {
      throw new AccessDeniedException(file.toString());
    }
    Path fresh = free(target);
    try {
      Files.write(fresh, bytes, StandardOpenOption.CREATE_NEW);
      permissions(target, fresh);
      Files.move(fresh, target, StandardCopyOption.REPLACE_EXISTING);
    } catch (FileSystemException e) {
      throw e; // it names the file
    } catch (IOException e) {
      throw new FileSystemException(file.toString(), null, e.getMessage() + "; it is as it was");
    } finally {
      Files.deleteIfExists(fresh);
    }
  }

  /** A name beside a file that no file has. */
  private static Path free(Path target) throws IOException {
    for (int i = 0; i < 1000; i++) {
      Path free = target.resolveSibling(".new-" + i + "-" + target.getFileName());
      if (!Files.exists(free)) {
        return free;
      }
    }
    throw new FileAlreadyExistsException(target.resolveSibling(".new-…").toString());
  }

  private static void permissions(Path from, Path to) throws IOException {
    PosixFileAttributeView old = Files.getFileAttributeView(from, PosixFileAttributeView.class);
    PosixFileAttributeView own = Files.getFileAttributeView(to, PosixFileAttributeView.class);
    if (old != null && own != null && Files.exists(from)) {
      own.setPermissions(old.readAttributes().permissions());
    }
  }
}
