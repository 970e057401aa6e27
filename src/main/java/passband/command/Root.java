package passband.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
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
   * Parses the files but for the first on a thread of its own, while the first is read: of one
   * procedure and what it uses a check is done sooner. What becomes of them shows when they are
   * taken.
   */
  void ahead(Set<String> files) {
    List<String> used = new ArrayList<>(files).subList(1, files.size());
    if (used.isEmpty()) {
      return;
    }
    Thread thread = InOrder.thread(() -> used.forEach(parsed::ahead));
    thread.start();
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
