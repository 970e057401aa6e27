package passband.library;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.Closeable;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads many of git's objects by one process. */
public final class GitObjects implements Closeable {
  private final GitProgram git;
  private @Nullable Process process;
  private @Nullable InputStream in;

  /**
   * @param folder somewhere in the work tree
   */
  public GitObjects(Path folder) {
    this.git = new GitProgram(folder);
  }

  /**
   * A blob; null where there is none.
   *
   * @param name whatever names it to git, such as {@code HEAD:a/b}
   */
  synchronized byte @Nullable [] blob(String name) throws IOException {
    if (name.indexOf('\n') >= 0) {
      return git.output(List.of("cat-file", "blob", name));
    }
    if (process == null || in == null) {
      process = git.start(List.of("cat-file", "--batch"));
      in = new BufferedInputStream(process.getInputStream());
    }
    process.getOutputStream().write((name + "\n").getBytes(StandardCharsets.UTF_8));
    process.getOutputStream().flush();
    String head = line(in);
    int size = head.lastIndexOf(' ') + 1;
    int kind = head.lastIndexOf(' ', size - 2) + 1;
    if (head.endsWith(" missing") || head.endsWith(" ambiguous")) {
      return null;
    }
    long length = Long.parseLong(head.substring(size));
    if (length > SourceReader.LARGEST) {
      close();
      throw new IOException("it is larger than " + (SourceReader.LARGEST >> 20) + " MiB");
    }
    byte[] bytes = in.readNBytes((int) length);
    if (in.read() < 0) {
      throw new EOFException("git ended early");
    }
    return head.startsWith("blob ", kind) ? bytes : null;
  }

  private static String line(InputStream in) throws IOException {
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    for (int b = in.read(); b != '\n'; b = in.read()) {
      if (b < 0) {
        throw new EOFException("git ended early");
      }
      line.write(b);
    }
    return line.toString(StandardCharsets.UTF_8);
  }

  @Override
  public synchronized void close() throws IOException {
    if (process != null) {
      process.getOutputStream().close();
      process.destroy();
      process = null;
      in = null;
    }
  }
}
