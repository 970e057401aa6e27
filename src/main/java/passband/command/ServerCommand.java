package passband.command;

import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import passband.build.SourceSelection;
import passband.library.Disk;
import passband.library.Paths;
import passband.library.SourceReader;
import passband.library.UsageException;
import passband.server.Folders;
import passband.server.Server;

/** {@code passband server}: the language server, on standard input and output. */
final class ServerCommand {
  private ServerCommand() {}

  static int run(List<String> words) throws UsageException {
    if (!words.isEmpty()) {
      throw new UsageException("server takes nothing: it speaks on standard input and output");
    }
    return Server.serve(
        new FileInputStream(FileDescriptor.in),
        new FileOutputStream(FileDescriptor.out),
        new OnDisk());
  }

  /** The disk's files by the editor's identifiers. */
  private static final class OnDisk implements Folders {
    @Override
    public SourceReader reader(String folderUri) {
      Disk disk = new Disk(folder(folderUri));
      return disk::read;
    }

    @Override
    public List<String> sources(String folderUri) throws IOException {
      Path folder = folder(folderUri);
      if (!Files.isDirectory(folder)) {
        return List.of();
      }
      return SourceSelection.sourcesIn(folder).stream()
          .map(p -> Paths.of(folder.relativize(p)))
          .sorted()
          .toList();
    }

    private static Path folder(String uri) {
      try {
        return Path.of(URI.create(uri));
      } catch (IllegalArgumentException | java.nio.file.FileSystemNotFoundException e) {
        return Path.of("nowhere"); // a document that is on no disk uses no other
      }
    }
  }
}
