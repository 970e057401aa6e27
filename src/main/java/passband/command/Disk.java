package passband.command;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import passband.resolve.Library;
import passband.source.SourceReader;

/** Reads the files of a library root from a file system, and none outside it, by whatever link. */
final class Disk implements SourceReader {
  private final Path root;

  Disk(Path root) {
    this.root = root;
  }

  @Override
  public byte[] read(String path) throws IOException {
    Path file = Slashes.resolve(root, path);
    if (!Files.exists(file)) {
      throw new NoSuchFileException(path);
    }
    if (!file.toRealPath().startsWith(root.toRealPath())) {
      throw new Library.OutsideRootException("it leads out of the library");
    }
    if (Files.isDirectory(file)) {
      throw new IOException("it is a folder");
    }
    if (!Files.isRegularFile(file)) {
      throw new IOException("it is no regular file");
    }
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes = in.readNBytes(LARGEST + 1);
      if (bytes.length > LARGEST) {
        throw new IOException("it is larger than " + (LARGEST >> 20) + " MiB");
      }
      return bytes;
    } catch (java.nio.file.AccessDeniedException e) {
      throw new IOException("it may not be read");
    }
  }
}
