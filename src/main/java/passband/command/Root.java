package passband.command;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import passband.resolve.ParsedFiles;

/**
 * A library's root folder with its parsed files: each is let go of when the last group that takes
 * it is done, so that of a large library only a part is ever held.
 */
final class Root {
  private final Path folder;
  private final String shown;
  private final Disk disk;
  private final ParsedFiles parsed;
  private final Map<String, Integer> waiting = new HashMap<>();

  /**
   * @param shown what stands before a file's path in messages
   */
  Root(Path folder, String shown) {
    this.folder = folder;
    this.shown = shown;
    this.disk = new Disk(folder);
    this.parsed = new ParsedFiles(shown, disk);
  }

  String shown() {
    return shown;
  }

  Disk disk() {
    return disk;
  }

  ParsedFiles parsed() {
    return parsed;
  }

  /** The place of a file with {@code /} between folders. */
  Path resolve(String path) {
    return Slashes.resolve(folder, path);
  }

  /**
   * Parses what a file uses on a thread of its own, while the file itself is read: of one procedure
   * a check is done sooner. What becomes of it shows when it is taken.
   */
  void ahead(String start) {
    Set<String> used = new UseGraph(Set.of(start), disk, true).from(start);
    used.remove(start);
    if (!used.isEmpty()) {
      InOrder.thread(() -> used.forEach(parsed::ahead)).start();
    }
  }

  /** Makes known that a group takes these files. */
  void expect(Set<String> files) {
    files.forEach(file -> waiting.merge(file, 1, Integer::sum));
  }

  /** A group is done with these files. */
  synchronized void done(Set<String> files) {
    for (String file : files) {
      if (waiting.merge(file, -1, Integer::sum) == 0) {
        parsed.forget(file);
      }
    }
  }
}
