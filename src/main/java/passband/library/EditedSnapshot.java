package passband.library;

import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A snapshot with another version of one file.
 *
 * @param path of the file
 * @param bytes null where it is to be absent
 */
public record EditedSnapshot(Snapshot others, String path, byte @Nullable [] bytes)
    implements Snapshot {

  @Override
  public String name() {
    return others.name();
  }

  @Override
  public byte[] read(String asked) throws IOException {
    return asked.equals(path) ? own() : others.read(asked);
  }

  private byte[] own() throws IOException {
    if (bytes == null) {
      throw new NoSuchFileException(path);
    }
    return bytes;
  }

  @Override
  public SourceReader below(String folder) {
    SourceReader reader = others.below(folder);
    return asked -> path.equals(folder + asked) ? own() : reader.read(asked);
  }

  @Override
  public List<String> sources(String below) throws IOException {
    List<String> sources = new ArrayList<>(others.sources(below));
    sources.remove(path);
    if (bytes != null && below.isEmpty() && path.endsWith(SourceFiles.EXTENSION)) {
      sources.add(path);
    }
    return sources;
  }

  @Override
  public Set<String> present(Collection<String> paths) throws IOException {
    return others.present(paths);
  }
}
