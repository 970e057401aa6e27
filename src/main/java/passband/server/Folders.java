package passband.server;

import java.io.IOException;
import java.util.List;
import passband.library.SourceReader;

/** Where the server gets at files that are not open in the editor; the command knows the disk. */
public interface Folders {
  /** Reads the files below a folder. */
  SourceReader reader(String folderUri);

  /** Whether a folder is marked as the root of a library. */
  boolean marked(String folderUri);

  /** Whether a folder holds another, or is the same, with symbolic links followed. */
  boolean holds(String folderUri, String below);

  /** The sources of the library with this root, relative to it, {@code /} between folders. */
  List<String> sources(String folderUri) throws IOException;
}
