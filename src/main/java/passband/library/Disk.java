package passband.library;

import java.io.FileInputStream;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import org.jspecify.annotations.Nullable;

/** Reads the files of a library root from a file system, and none outside it, by whatever link. */
public final class Disk implements SourceReader {
  private final Path root;
  private @Nullable Path real;

  public Disk(Path root) {
    this.root = root;
  }

  @Override
  public byte[] read(String path) throws IOException {
    Path file = Paths.resolveWritten(root, path);
    if (file == null) {
      throw new NoSuchFileException(path);
    }
    BasicFileAttributes attributes;
    try {
      attributes = Files.readAttributes(file, BasicFileAttributes.class);
    } catch (IOException e) {
      throw new NoSuchFileException(path);
    }
    if (!file.toRealPath().startsWith(real())) {
      throw new Library.OutsideRootException("it is outside the library root");
    }
    if (attributes.isDirectory()) {
      throw new IOException("it is a folder");
    }
    if (!attributes.isRegularFile()) {
      throw new IOException("it is not a regular file");
    }
    try (InputStream in = opened(file)) {
      byte[] bytes = in.readNBytes(LARGEST + 1);
      if (bytes.length > LARGEST) {
        throw new IOException("it is larger than " + (LARGEST >> 20) + " MiB");
      }
      return bytes;
    } catch (AccessDeniedException | FileNotFoundException e) {
      throw new IOException("permission denied");
    }
  }

  private synchronized Path real() throws IOException {
    if (real == null) {
      real = root.toRealPath();
    }
    return real;
  }

  /** Of a file of the machine's own the plain stream, which needs no channel set up. */
  private static InputStream opened(Path file) throws IOException {
    return file.getFileSystem() == FileSystems.getDefault()
        ? new FileInputStream(file.toFile())
        : Files.newInputStream(file);
  }
}
