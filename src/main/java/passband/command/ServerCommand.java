package passband.command;

import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.util.List;
import passband.library.UsageException;
import passband.server.Server;

/** {@code passband server}: the language server, on standard input and output. */
final class ServerCommand {
  private ServerCommand() {}

  static int run(List<String> words) throws UsageException {
    if (!words.isEmpty()) {
      throw new UsageException(
          "'server' takes no arguments; it communicates over standard input and output");
    }
    return Server.serve(
        new FileInputStream(FileDescriptor.in),
        new FileOutputStream(FileDescriptor.out),
        new DiskFolders(null));
  }
}
