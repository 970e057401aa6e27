package passband.library;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Files of a commit, by the program {@code git}. Paths are from the repository's top. */
public final class Git implements SourceReader {
  private final Path folder;
  private final String revision;

  /**
   * @param folder somewhere in the work tree
   * @param revision whatever names a commit to git
   */
  public Git(Path folder, String revision) {
    this.folder = folder;
    this.revision = revision;
  }

  @Override
  public byte[] read(String path) throws IOException {
    byte[] bytes = output("cat-file", "blob", revision + ":" + path);
    if (bytes == null) {
      throw new NoSuchFileException(path);
    }
    return bytes;
  }

  /** The sources under a path, which may be one itself; empty where there are none. */
  public List<String> sources(String path) throws IOException {
    byte[] listed =
        output("ls-tree", "-r", "-z", "--full-tree", "--name-only", revision, "--", path);
    List<String> sources = new ArrayList<>();
    if (listed != null) {
      for (String name : new String(listed, StandardCharsets.UTF_8).split("\0")) {
        if (name.endsWith(".pband")) {
          sources.add(name);
        }
      }
    }
    return sources;
  }

  /** Those of the paths that are there. */
  public Set<String> present(Collection<String> paths) throws IOException {
    List<String> arguments =
        new ArrayList<>(List.of("ls-tree", "-z", "--full-tree", "--name-only", revision, "--"));
    arguments.addAll(paths);
    byte[] listed = paths.isEmpty() ? null : output(arguments.toArray(new String[0]));
    return listed == null || listed.length == 0
        ? Set.of()
        : Set.of(new String(listed, StandardCharsets.UTF_8).split("\0"));
  }

  /** The folder below the repository's top: empty for the top, else with a closing {@code /}. */
  public String below() throws IOException {
    byte[] prefix = output("rev-parse", "--show-prefix");
    return prefix == null ? "" : new String(prefix, StandardCharsets.UTF_8).strip();
  }

  /** What git prints; null when it fails. */
  private byte @Nullable [] output(String... arguments) throws IOException {
    List<String> command = new ArrayList<>(List.of("git", "-C", folder.toString()));
    command.addAll(List.of(arguments));
    Process process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
    process.getOutputStream().close();
    try (InputStream in = process.getInputStream()) {
      byte[] bytes = in.readNBytes(LARGEST + 1);
      if (bytes.length > LARGEST) {
        throw new IOException("it is larger than " + (LARGEST >> 20) + " MiB");
      }
      return process.waitFor() == 0 ? bytes : null;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("git was interrupted", e);
    }
  }
}
