package passband.command;

import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import passband.server.Server;

/** {@code passband server}: the language server, on standard input and output. */
final class ServerCommand implements Verb {
  private final Invocation invocation;

  ServerCommand(Invocation invocation) {
    this.invocation = invocation;
  }

  @Override
  public int run(Arguments arguments) {
    // The protocol's library logs what an editor gets wrong; a line of it without a stack trace.
    System.setProperty("java.util.logging.SimpleFormatter.format", "passband: %5$s%n");
    String root = arguments.valueOrNull("--root");
    return Server.serve(
        new FileInputStream(FileDescriptor.in),
        new FileOutputStream(FileDescriptor.out),
        new DiskFolders(
            root == null ? null : invocation.workingDirectory().resolve(root).normalize()));
  }
}
