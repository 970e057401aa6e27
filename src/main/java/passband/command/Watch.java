package passband.command;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.FileSystem;
import java.nio.file.Path;
import java.nio.file.StandardWatchEventKinds;
import java.nio.file.WatchEvent;
import java.nio.file.WatchKey;
import java.nio.file.WatchService;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import passband.library.LibraryRoot;
import passband.library.Paths;
import passband.library.UsageException;

/** {@code --watch}: runs a command again whenever a file that it read is saved. */
final class Watch {
  /** An editor's save is several events; so long must be quiet before the command runs. */
  private static final long QUIET_MILLIS = 10;

  private final PrintStream err;
  private final int mostRuns;

  /**
   * @param mostRuns after how many runs it ends; 0 for never
   */
  Watch(PrintStream err, int mostRuns) {
    this.err = err;
    this.mostRuns = mostRuns;
  }

  /** What is run: gives its exit status and tells what it read. */
  interface Command {
    int run() throws UsageException, IOException;

    /** The files of the last run. */
    Set<Path> read();
  }

  /** Runs the command now and after each save; the last exit status. */
  int run(Command command, FileSystem files) throws UsageException, IOException {
    try (WatchService service = files.newWatchService()) {
      Map<WatchKey, Path> folders = new HashMap<>();
      int status = command.run();
      for (int runs = 1; mostRuns == 0 || runs < mostRuns; runs++) {
        register(command.read(), service, folders);
        err.println("watching " + command.read().size() + " files");
        err.flush();
        await(command.read(), service, folders);
        status = command.run();
      }
      return status;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return ExitStatus.CANNOT_RUN;
    }
  }

  private static void register(Set<Path> read, WatchService service, Map<WatchKey, Path> folders)
      throws IOException {
    Set<Path> wanted = new TreeSet<>();
    read.forEach(file -> wanted.add(Paths.folder(file)));
    wanted.removeAll(folders.values());
    for (Path folder : wanted) {
      folders.put(
          folder.register(
              service,
              StandardWatchEventKinds.ENTRY_CREATE,
              StandardWatchEventKinds.ENTRY_MODIFY,
              StandardWatchEventKinds.ENTRY_DELETE),
          folder);
    }
  }

  private static void await(Set<Path> read, WatchService service, Map<WatchKey, Path> folders)
      throws InterruptedException {
    boolean changed = false;
    while (true) {
      WatchKey key = changed ? service.poll(QUIET_MILLIS, TimeUnit.MILLISECONDS) : service.take();
      if (key == null) {
        return;
      }
      for (WatchEvent<?> event : key.pollEvents()) {
        Path folder = folders.get(key);
        Path file = folder != null && event.context() instanceof Path p ? folder.resolve(p) : null;
        changed |= file == null || concerns(file, read);
      }
      key.reset();
    }
  }

  private static boolean concerns(Path file, Set<Path> read) {
    return read.stream().anyMatch(r -> r.toAbsolutePath().equals(file))
        || file.toString().endsWith(".pband")
        || file.endsWith("released.txt")
        || file.endsWith(LibraryRoot.MARKER);
  }
}
