package passband.library;

import java.io.IOException;

/**
 * Where the compiler gets a file's bytes from: the command line gives it a disk, the editor its
 * open buffers, a test a map.
 */
public interface SourceReader {
  /** The largest file that is read, in bytes. */
  int LARGEST = 16 << 20;

  /**
   * The bytes of a file.
   *
   * @param path a path inside the library, {@code /} between folders, already normalised
   * @throws java.nio.file.NoSuchFileException when there is none
   * @throws IOException when it cannot be read; the message is for a person
   */
  byte[] read(String path) throws IOException;
}
