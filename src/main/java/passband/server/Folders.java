package passband.server;

import java.io.IOException;
import java.util.List;
import passband.library.SourceReader;

/** Where the server gets at files that are not open in the editor; the command knows the disk. */
public interface Folders {
  /** Reads the files below a folder. */
  SourceReader reader(String folderUri);

  /** The sources below a folder, relative to it, {@code /} between folders. */
  List<String> sources(String folderUri) throws IOException;
}
