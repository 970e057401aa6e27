package passband.build;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import passband.library.Paths;
import passband.source.Sha256;

/**
 * What builds wrote and from what: a group whose files are by their digests those of its last
 * build, by the same program with the same options, and whose output stands as it was written, need
 * not be compiled again.
 *
 * <p>As text, a line for a thing, tabs between its parts: a head, then for each group {@code
 * group}, its {@code in} and {@code out} files, the {@code name} of each procedure with its place,
 * and the parts and rules that it {@code took} up. Lines of {@link WrittenFiles} follow after
 * {@code end}.
 */
public final class BuildRecord {
  /** How every record begins. */
  static final String TITLE = "passband built ";

  private static final String HEAD = TITLE + "3\t";
  private static final String ABSENT = "-";

  /**
   * One group's.
   *
   * @param key its start and what it is grouped by
   * @param in digests by path; {@link #ABSENT} for a file that was asked for in vain
   * @param out sizes and times by path below the output folder
   * @param names each procedure's name, file and place
   * @param takenUp the parts and rules that they took up
   */
  public record Entry(
      String key,
      Map<String, String> in,
      Map<String, String> out,
      List<Name> names,
      Set<String> takenUp) {}

  /** A procedure's name and where it stands. */
  public record Name(String name, String path, int start, int end) {}

  private final String head;
  private final Map<String, Entry> entries = new TreeMap<>();

  /**
   * @param program what tells this program from one that may write other bytes
   * @param options of the command line, as far as they change what is written
   */
  public BuildRecord(String program, String options) {
    this.head = HEAD + program + "\t" + options;
  }

  /**
   * Takes up what another run left; nothing where it was another program or other options, or where
   * the record is damaged.
   */
  public void read(byte[] record) {
    List<String> lines = List.of(new String(record, StandardCharsets.UTF_8).split("\n"));
    int end = lines.indexOf("end");
    try {
      if (end > 0 && lines.get(0).equals(head)) {
        readEntries(lines.subList(1, end));
      }
    } catch (IndexOutOfBoundsException | IllegalArgumentException e) {
      entries.clear();
    }
  }

  private void readEntries(List<String> lines) {
    Entry entry = null;
    for (String line : lines) {
      String[] parts = line.split("\t", -1);
      if (parts[0].equals("group")) {
        entry =
            new Entry(
                parts[1], new TreeMap<>(), new TreeMap<>(), new ArrayList<>(), new TreeSet<>());
        entries.put(entry.key, entry);
        continue;
      }
      if (entry == null) {
        throw new IllegalArgumentException("a line of no group");
      }
      switch (parts[0]) {
        case "in" -> entry.in.put(parts[2], parts[1]);
        case "out" -> entry.out.put(parts[2], parts[1]);
        case "took" -> entry.takenUp.add(parts[1]);
        default ->
            entry.names.add(
                new Name(
                    parts[1], parts[2], Integer.parseInt(parts[3]), Integer.parseInt(parts[4])));
      }
    }
  }

  /** The record as it is kept; entries of groups that this run did not see stay. */
  public synchronized byte[] written() {
    StringBuilder text = new StringBuilder(head).append('\n');
    for (Entry entry : entries.values()) {
      text.append("group\t").append(entry.key).append('\n');
      entry.in.forEach((path, digest) -> line(text, "in", digest, path));
      entry.out.forEach((path, digest) -> line(text, "out", digest, path));
      entry.takenUp.forEach(block -> text.append("took\t").append(block).append('\n'));
      entry.names.forEach(n -> line(text, "name", n.name + "\t" + n.path, n.start + "\t" + n.end));
    }
    return text.append("end\n").toString().getBytes(StandardCharsets.UTF_8);
  }

  private static void line(StringBuilder text, String kind, String first, String second) {
    text.append(kind).append('\t').append(first).append('\t').append(second).append('\n');
  }

  /** Keeps a group's entry, or with null forgets it. */
  public synchronized void put(String key, @Nullable Entry entry) {
    if (entry == null) {
      entries.remove(key);
    } else {
      entries.put(key, entry);
    }
  }

  /**
   * What the record says of a group; null where it says nothing, or something has changed since.
   */
  public @Nullable Entry unchanged(String key, Path base, Path out) throws IOException {
    Entry entry;
    synchronized (this) {
      entry = entries.get(key);
    }
    return entry != null && sameIn(entry, base) && sameOut(entry, out) ? entry : null;
  }

  private static boolean sameIn(Entry entry, Path base) throws IOException {
    for (Map.Entry<String, String> file : entry.in.entrySet()) {
      if (!digest(base.resolve(file.getKey())).equals(file.getValue())) {
        return false;
      }
    }
    return true;
  }

  private static boolean sameOut(Entry entry, Path out) throws IOException {
    for (Map.Entry<String, String> file : entry.out.entrySet()) {
      if (!Output.look(out.resolve(file.getKey())).equals(file.getValue())) {
        return false;
      }
    }
    return true;
  }

  /** The digests of files by their paths relative to a base. */
  public static Map<String, String> digests(Set<Path> files, Path base) throws IOException {
    Map<String, String> digests = new TreeMap<>();
    for (Path file : files) {
      digests.put(Paths.from(base, file), digest(file));
    }
    return digests;
  }

  private static String digest(Path file) throws IOException {
    return Files.isRegularFile(file) ? Sha256.hex(Files.readAllBytes(file)) : ABSENT;
  }
}
