package passband.library;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Files of a commit or of the index, by the program {@code git}. */
public final class Git implements Snapshot {
  /** Names the index where a commit could stand: what is not in conflict in it. */
  public static final String INDEX = ":0";

  /** How git's name of the tree without a file starts: what there was before the first commit. */
  private static final String EMPTY = "4b825dc642";

  private final GitProgram git;
  private final String revision;
  private final @Nullable GitObjects objects;

  /**
   * @param folder somewhere in the work tree
   * @param revision whatever names a commit to git
   */
  public Git(Path folder, String revision) {
    this(folder, revision, null);
  }

  /**
   * @param objects what reads the files; null for a process each
   */
  public Git(Path folder, String revision, @Nullable GitObjects objects) {
    this.git = new GitProgram(folder);
    this.revision = revision;
    this.objects = objects;
  }

  @Override
  public String name() {
    return revision.equals(INDEX) ? "the index" : revision.startsWith(EMPTY) ? "nothing" : revision;
  }

  @Override
  public byte[] read(String path) throws IOException {
    String name = revision + ":" + path;
    byte[] bytes =
        objects == null ? git.output(List.of("cat-file", "blob", name)) : objects.blob(name);
    if (bytes == null) {
      throw new NoSuchFileException(path);
    }
    return bytes;
  }

  @Override
  public List<String> sources(String path) throws IOException {
    List<String> sources = new ArrayList<>();
    for (String name : listed(path.isEmpty() ? List.of() : List.of(path), true)) {
      if (name.endsWith(SourceFiles.EXTENSION)) {
        sources.add(name);
      }
    }
    return sources;
  }

  /**
   * The records of releases in and below a folder, from the repository's top; empty for the top.
   */
  public List<String> records(String folder) throws IOException {
    List<String> records = new ArrayList<>();
    for (String name : listed(folder.isEmpty() ? List.of() : List.of(folder), true)) {
      if (name.equals(Released.NAME) || name.endsWith("/" + Released.NAME)) {
        records.add(name);
      }
    }
    return records;
  }

  /** Whether git knows the commit. */
  public boolean exists() throws IOException {
    return git.line("rev-parse", "--verify", "--quiet", "--end-of-options", revision + "^{commit}")
        != null;
  }

  @Override
  public Set<String> present(Collection<String> paths) throws IOException {
    return paths.isEmpty() ? Set.of() : Set.copyOf(listed(paths, false));
  }

  private List<String> listed(Collection<String> paths, boolean below) throws IOException {
    boolean index = revision.equals(INDEX);
    List<String> arguments = new ArrayList<>();
    if (index) {
      arguments.addAll(List.of("ls-files", "-z", "--full-name", "--"));
      arguments.addAll(paths.isEmpty() ? List.of(":(top)") : List.of());
    } else {
      arguments.addAll(List.of("ls-tree", "-z", "--full-tree", "--name-only"));
      arguments.addAll(below ? List.of("-r", revision, "--") : List.of(revision, "--"));
    }
    paths.forEach(path -> arguments.add(index ? ":(top,literal)" + path : path));
    return git.names(arguments);
  }

  /** The folder below the repository's top: empty for the top, else with a closing {@code /}. */
  public String below() throws IOException {
    byte[] prefix = git.output(List.of("rev-parse", "--show-prefix"));
    return prefix == null ? "" : new String(prefix, StandardCharsets.UTF_8).strip();
  }

  /** The name that git gives to a file's bytes; null where it cannot read it. */
  public static @Nullable String blobOf(Path folder, String file) throws IOException {
    return new GitProgram(folder).line("hash-object", "--no-filters", "--", file);
  }

  /** A commit's name as short as it can be; its own where git knows no such commit. */
  public static String shortened(Path folder, String commit) throws IOException {
    String name = new GitProgram(folder).line("rev-parse", "--short=10", commit);
    return name == null ? commit : name;
  }
}
