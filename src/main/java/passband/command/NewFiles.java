package passband.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import passband.library.UsageException;

/** Files that are written only if none of them is there. */
final class NewFiles {
  private NewFiles() {}

  /**
   * Writes them into a folder, which is made where it is missing.
   *
   * @param files texts by name
   * @param shown the folder as it was given
   * @throws UsageException when one of them is there; then none is written
   */
  static void write(Path folder, String shown, Map<String, String> files)
      throws UsageException, IOException {
    for (String name : files.keySet()) {
      if (Files.exists(folder.resolve(name), java.nio.file.LinkOption.NOFOLLOW_LINKS)) {
        throw new UsageException(
            "there is already a file " + shown(shown, name) + "; nothing was written");
      }
    }
    if (Files.exists(folder) && !Files.isDirectory(folder)) {
      throw new UsageException(shown + " is no folder");
    }
    Files.createDirectories(folder);
    List<Path> written = new ArrayList<>();
    try {
      for (Map.Entry<String, String> file : files.entrySet()) {
        Path path = folder.resolve(file.getKey());
        written.add(path);
        Files.write(
            path,
            file.getValue().getBytes(StandardCharsets.UTF_8),
            StandardOpenOption.CREATE_NEW,
            StandardOpenOption.WRITE);
      }
    } catch (java.nio.file.FileAlreadyExistsException e) {
      written.remove(written.size() - 1); // another's
      remove(written);
      throw e;
    } catch (IOException e) {
      remove(written);
      throw e;
    }
  }

  private static void remove(List<Path> written) throws IOException {
    for (Path path : written) {
      Files.deleteIfExists(path);
    }
  }

  /** A file's name as it is printed. */
  static String shown(String folder, String name) {
    return folder.equals(".") ? name : folder.replaceFirst("[/\\\\]$", "") + "/" + name;
  }
}
