package passband.library;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A library's root folder with its parsed files: each is let go of when the last group that takes
 * it is done, so that of a large library only a part is ever held.
 */
public final class Root {
  private final Path folder;
  private final DisplayPaths names;
  private final Disk disk;
  private final ParsedFiles parsed;
  private final Map<String, Integer> waiting = new HashMap<>();

  /**
   * @param names what messages call the folder and its files
   */
  public Root(Path folder, DisplayPaths names) {
    this.folder = folder;
    this.names = names;
    this.disk = new Disk(folder);
    this.parsed = new ParsedFiles(names, disk);
  }

  public DisplayPaths names() {
    return names;
  }

  public Disk disk() {
    return disk;
  }

  public ParsedFiles parsed() {
    return parsed;
  }

  /** The place of a file with {@code /} between folders; null where none can have that name. */
  public @Nullable Path resolve(String path) {
    return Paths.resolveWritten(folder, path);
  }

  /**
   * Parses what a file uses on a thread of its own, while the file itself is read: of one procedure
   * a check is done sooner. What becomes of it shows when it is taken.
   */
  public void prefetch(String start) {
    Set<String> used = new UseGraph(Set.of(start), disk, true).from(start);
    used.remove(start);
    if (!used.isEmpty()) {
      BackgroundThread.of(() -> used.forEach(parsed::prefetch)).start();
    }
  }

  /** Makes known that a group takes these files. */
  public void expect(Set<String> files) {
    files.forEach(file -> waiting.merge(file, 1, Integer::sum));
  }

  /** A group is done with these files. */
  public synchronized void done(Set<String> files) {
    for (String file : files) {
      if (waiting.merge(file, -1, Integer::sum) == 0) {
        parsed.forget(file);
      }
    }
  }
}
