package passband.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Writes a procedure's folder aside and moves it into place, so that what stands there is whole:
 * the old or the new.
 */
final class Output {
  private final Path out;

  Output(Path out) {
    this.out = out;
  }

  /** Replaces the folder of a procedure by one with these files; paths may have folders in them. */
  void write(String procedure, Map<String, byte[]> files) throws IOException {
    Files.createDirectories(out);
    Path fresh = Files.createTempDirectory(out, ".new-");
    try {
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        Path path = fresh.resolve(file.getKey().replace("/", out.getFileSystem().getSeparator()));
        Files.createDirectories(path.getParent());
        Files.write(path, file.getValue());
      }
      openToAll(fresh);
      replace(out.resolve(procedure), fresh);
    } finally {
      delete(fresh);
    }
  }

  /** Temporary folders are private; a result is as readable as any other folder. */
  private static void openToAll(Path folder) throws IOException {
    if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      Files.setPosixFilePermissions(
          folder, java.nio.file.attribute.PosixFilePermissions.fromString("rwxr-xr-x"));
    }
  }

  private void replace(Path target, Path fresh) throws IOException {
    if (!Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
      Files.move(fresh, target);
      return;
    }
    Path old = Files.createTempDirectory(out, ".old-").resolve("was");
    try {
      Files.move(target, old);
      Files.move(fresh, target);
    } catch (IOException e) {
      if (Files.exists(old) && !Files.exists(target)) {
        Files.move(old, target);
      }
      throw e;
    } finally {
      delete(old.getParent());
    }
  }

  private static void delete(Path folder) throws IOException {
    if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    List<Path> all;
    try (Stream<Path> walk = Files.walk(folder)) {
      all = walk.sorted(Comparator.reverseOrder()).toList();
    }
    for (Path path : all) {
      Files.delete(path);
    }
  }

  /** Text as the bytes of a file. */
  static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
