package passband.command;

import java.io.IOException;
import java.net.URI;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.library.Disk;
import passband.library.LibraryRoot;
import passband.library.Paths;
import passband.library.SourceFiles;
import passband.library.SourceReader;
import passband.server.Folders;

/** The disk's folders by the editor's identifiers. */
public final class DiskFolders implements Folders {
  /** In the place of a folder that is on no disk. */
  private static final Path NOWHERE = Path.of("nowhere");

  private final @Nullable Path givenRoot;

  /**
   * @param givenRoot the one root that files below it have; null for the rule's
   */
  public DiskFolders(@Nullable Path givenRoot) {
    this.givenRoot = givenRoot;
  }

  @Override
  public SourceReader reader(String folderUri) {
    Disk disk = new Disk(folder(folderUri));
    return disk::read;
  }

  @Override
  public boolean marked(String folderUri) {
    Path folder = folder(folderUri);
    return givenRoot == null ? LibraryRoot.marked(folder) : folder.equals(givenRoot);
  }

  @Override
  public boolean holds(String folderUri, String below) {
    Path folder = folder(folderUri);
    return folder.equals(NOWHERE) || LibraryRoot.holds(folder, folder(below));
  }

  @Override
  public List<String> sources(String folderUri) throws IOException {
    Path folder = folder(folderUri);
    List<String> sources = new ArrayList<>();
    if (Files.isDirectory(folder)) {
      for (Path source :
          folder.equals(givenRoot) ? SourceFiles.in(folder) : SourceFiles.ofLibrary(folder)) {
        sources.add(Paths.of(folder.relativize(source)));
      }
    }
    return sources;
  }

  private static Path folder(String uri) {
    try {
      return Path.of(URI.create(uri));
    } catch (IllegalArgumentException | FileSystemNotFoundException e) {
      return NOWHERE;
    }
  }
}
