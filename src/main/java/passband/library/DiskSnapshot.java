package passband.library;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** The work tree; its sources are those that git knows of, or outside a repository all. */
public final class DiskSnapshot implements Snapshot {
  private final Path top;

  /**
   * @param top the top of the work tree
   */
  public DiskSnapshot(Path top) {
    this.top = top;
  }

  @Override
  public String name() {
    return "the work tree";
  }

  @Override
  public byte[] read(String path) throws IOException {
    return new Disk(top).read(path);
  }

  @Override
  public SourceReader below(String folder) {
    return new Disk(Paths.resolve(top, folder));
  }

  @Override
  public List<String> sources(String path) throws IOException {
    Set<String> sources = new LinkedHashSet<>();
    if (!Files.exists(top.resolve(LibraryRoot.GIT))) {
      SourceFiles.in(top.resolve(path))
          .forEach(file -> sources.add(Paths.of(top.relativize(file))));
      return List.copyOf(sources);
    }
    for (String source : new Git(top, Git.INDEX).sources(path)) {
      if (Files.isRegularFile(Paths.resolve(top, source))) {
        sources.add(source);
      }
    }
    return List.copyOf(sources);
  }

  @Override
  public Set<String> present(Collection<String> paths) {
    Set<String> present = new TreeSet<>();
    for (String path : paths) {
      Path place = Paths.resolveWritten(top, path);
      if (place != null && Files.isRegularFile(place)) {
        present.add(path);
      }
    }
    return present;
  }
}
