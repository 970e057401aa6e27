package passband.command;

import java.nio.file.Path;

/** Between the paths of a file system and those of a library, with {@code /} between folders. */
final class Slashes {
  private Slashes() {}

  /** A path as a library writes it. */
  static String of(Path path) {
    return path.toString().replace(path.getFileSystem().getSeparator(), "/");
  }

  /** The place of a library's path below a folder. */
  static Path resolve(Path folder, String path) {
    return folder.resolve(path.replace("/", folder.getFileSystem().getSeparator()));
  }
}
