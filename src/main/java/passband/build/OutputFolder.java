package passband.build;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import passband.library.LibraryRoot;
import passband.library.SourceFiles;
import passband.library.UsageException;

/** What must not be in an output folder, and looks into folders that follow no link. */
final class OutputFolder {
  private OutputFolder() {}

  /** Refuses a folder that is a library or a work tree, or holds sources. */
  static void refuseSources(Path out) throws UsageException, IOException {
    for (Path path : in(out)) {
      refuseSource(out, path);
      if (isFolder(path) && !name(path).startsWith(".")) {
        for (Path below : in(path)) {
          refuseSource(out, below);
        }
      }
    }
  }

  private static void refuseSource(Path out, Path path) throws UsageException {
    String name = name(path);
    if (name.endsWith(SourceFiles.EXTENSION)
        || name.equals(LibraryRoot.MARKER)
        || name.equals(LibraryRoot.GIT)) {
      throw holds(out, path);
    }
  }

  /** Refuses a folder that holds a file that a build read: a source or a table. */
  static void refuseRead(Path out, Set<Path> read) throws UsageException {
    Path folder = out.toAbsolutePath().normalize();
    for (Path file : read) {
      if (file.toAbsolutePath().normalize().startsWith(folder) && exists(file)) {
        throw holds(out, file);
      }
    }
  }

  private static UsageException holds(Path out, Path source) {
    return new UsageException(
        source
            + ": the output folder "
            + out
            + " holds sources; nothing was written (name a folder of its own with --out)");
  }

  /** Whether a folder's limits file is that of a procedure of this name, made by this program. */
  static boolean isOf(String procedure, Path folder) throws IOException {
    Path limits = folder.resolve("limits.json");
    if (!isFolder(folder) || !Files.isRegularFile(limits, LinkOption.NOFOLLOW_LINKS)) {
      return false;
    }
    String head;
    try (var in = Files.newInputStream(limits)) {
      head = new String(in.readNBytes(1000), StandardCharsets.UTF_8);
    }
    return head.startsWith("{\n  \"format\": \"passband-limits/")
        && head.contains("\n  \"procedure\": \"" + procedure + "\"");
  }

  static List<Path> in(Path folder) throws IOException {
    List<Path> all = new ArrayList<>();
    try (DirectoryStream<Path> stream = Files.newDirectoryStream(folder)) {
      stream.forEach(all::add);
    }
    all.sort(null);
    return all;
  }

  static String name(Path path) {
    return path.getFileName().toString();
  }

  static boolean exists(Path path) {
    return Files.exists(path, LinkOption.NOFOLLOW_LINKS);
  }

  static boolean isFolder(Path path) {
    return Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS);
  }

  /** Deletes a folder that Passband made for itself, with all that is in it. */
  static void delete(Path folder) throws IOException {
    if (isFolder(folder)) {
      for (Path path : in(folder)) {
        delete(path);
      }
    }
    Files.deleteIfExists(folder);
  }
}
