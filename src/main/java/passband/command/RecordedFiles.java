package passband.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import passband.evidence.BadInput;
import passband.evidence.ItemList;
import passband.evidence.LimitsReader;
import passband.judge.Judge;
import passband.judge.Readings;
import passband.judge.Report;
import passband.library.UnforeseenException;
import passband.library.UsageException;

/** Reads limits and readings from files; what is wrong with one is said with its name. */
final class RecordedFiles {
  private final Path workingDirectory;

  RecordedFiles(Path workingDirectory) {
    this.workingDirectory = workingDirectory;
  }

  /** Part of the work on one file. */
  private interface Work<T> {
    T done() throws BadInput;
  }

  private static <T> T of(String path, Work<T> work) throws UsageException, IOException {
    return UnforeseenException.at(
        path,
        () -> {
          try {
            return work.done();
          } catch (BadInput e) {
            throw new UsageException(path + ": " + e.getMessage());
          }
        });
  }

  ItemList limits(String path) throws UsageException, IOException {
    String text = new String(bytes(path), StandardCharsets.UTF_8);
    return of(path, () -> LimitsReader.read(text));
  }

  Readings readings(String path) throws UsageException, IOException {
    byte[] bytes = bytes(path);
    return of(path, () -> Readings.parse(bytes));
  }

  /**
   * The verdicts on the readings of a file.
   *
   * @param date of the judgement; null when it is not known
   */
  Report report(ItemList list, Readings readings, String path, @Nullable String date)
      throws UsageException, IOException {
    return of(path, () -> Judge.judge(list, readings, date));
  }

  /** All of a file. */
  byte[] bytes(String path) throws UsageException, IOException {
    return Files.readAllBytes(file(workingDirectory, path));
  }

  /**
   * The files below a folder that may be records, in order.
   *
   * @param path of the folder, as it was named
   */
  static List<Path> records(Path folder, String path) throws UsageException, IOException {
    List<Path> files;
    try (Stream<Path> walk = Files.walk(folder)) {
      files =
          walk.filter(
                  file ->
                      file.toString().toLowerCase(Locale.ROOT).endsWith(".json")
                          && Files.isRegularFile(file))
              .sorted()
              .toList();
    }
    if (files.isEmpty()) {
      throw new UsageException("there is no .json file below " + path);
    }
    return files;
  }

  /** A file that was named. */
  static Path file(Path workingDirectory, String path) throws UsageException {
    Path file = workingDirectory.resolve(path);
    if (Files.isDirectory(file)) {
      throw new UsageException(path + " is a folder: name a file in it");
    }
    if (!Files.isRegularFile(file)) {
      throw new UsageException("there is no file " + path);
    }
    return file;
  }
}
