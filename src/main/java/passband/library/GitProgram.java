package passband.library;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Calls the program {@code git}. */
final class GitProgram {
  private final Path folder;

  /**
   * @param folder somewhere in the work tree
   */
  GitProgram(Path folder) {
    this.folder = folder;
  }

  /** What git prints; null when it fails. */
  byte @Nullable [] output(List<String> arguments) throws IOException {
    Process process = start(arguments);
    process.getOutputStream().close();
    try (InputStream in = process.getInputStream()) {
      byte[] bytes = in.readNBytes(SourceReader.LARGEST + 1);
      if (bytes.length > SourceReader.LARGEST) {
        process.destroy();
        throw new IOException("it is larger than " + (SourceReader.LARGEST >> 20) + " MiB");
      }
      return process.waitFor() == 0 ? bytes : null;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("git was interrupted", e);
    }
  }

  /** A process of git that goes on; its complaints go nowhere. */
  Process start(List<String> arguments) throws IOException {
    List<String> command = new ArrayList<>(List.of("git", "-C", folder.toString()));
    command.addAll(arguments);
    return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
  }

  /** The lines that git prints; none when it fails. */
  List<String> lines(String... arguments) throws IOException {
    return split(output(Arrays.asList(arguments)), "\n");
  }

  /** The names that git prints with {@code -z}; none when it fails. */
  List<String> names(List<String> arguments) throws IOException {
    return split(output(arguments), "\0");
  }

  private static List<String> split(byte @Nullable [] printed, String by) {
    return printed == null || printed.length == 0
        ? List.of()
        : List.of(new String(printed, StandardCharsets.UTF_8).split(by));
  }

  /** The one line that git prints; null when it fails or prints nothing. */
  @Nullable String line(String... arguments) throws IOException {
    List<String> lines = lines(arguments);
    return lines.isEmpty() ? null : lines.get(0);
  }
}
