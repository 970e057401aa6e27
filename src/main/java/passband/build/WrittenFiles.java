package passband.build;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import passband.render.IndexPage;

/**
 * Passband's own record of the files below an output folder that it wrote: nothing else there is
 * ever replaced or removed.
 *
 * <p>As text, a line for a thing, tabs between its parts: {@code wrote LOOK PATH}, {@code made
 * SOURCE PROCEDURE} and {@code about} with what the library's page says of a procedure. Other
 * lines, and lines that a stopped build left half written, say nothing.
 */
final class WrittenFiles {
  private final TreeMap<String, TreeSet<String>> looks = new TreeMap<>();
  private final TreeMap<String, String> sources = new TreeMap<>();
  private final TreeMap<String, IndexPage.Entry> abouts = new TreeMap<>();

  /** What a record's bytes say. */
  static WrittenFiles of(byte[] record) {
    WrittenFiles written = new WrittenFiles();
    String text = new String(record, StandardCharsets.UTF_8);
    // A line without its end may be half a line.
    for (String line : text.substring(0, text.lastIndexOf('\n') + 1).split("\n")) {
      String[] parts = line.split("\t", -1);
      if (parts.length == 3 && parts[0].equals("wrote")) {
        written.add(parts[2], parts[1]);
      } else if (parts.length == 3 && parts[0].equals("made")) {
        written.sources.put(parts[2], parts[1]);
      } else if (parts[0].equals("about")) {
        IndexPage.Entry about = IndexPage.Entry.read(List.of(parts).subList(1, parts.length));
        if (about != null) {
          written.about(about);
        }
      }
    }
    return written;
  }

  /**
   * Takes up a file.
   *
   * @param path below the output folder
   * @param look its size and time, see {@link Output#look}
   */
  synchronized void add(String path, String look) {
    looks.computeIfAbsent(path, p -> new TreeSet<>()).add(look);
  }

  /**
   * Takes up a procedure.
   *
   * @param source the path of its source from the output folder
   */
  synchronized void made(String procedure, String source) {
    if (source.indexOf('\t') < 0 && source.indexOf('\n') < 0) {
      sources.put(procedure, source);
    }
  }

  /** Takes up what the library's page says of a procedure. */
  synchronized void about(IndexPage.Entry about) {
    abouts.put(about.procedure(), about);
  }

  /** What is said of each procedure, by its name. */
  synchronized List<IndexPage.Entry> abouts() {
    return List.copyOf(abouts.values());
  }

  /** Forgets a procedure's files, its source and what is said of it. */
  synchronized void forget(String procedure) {
    looks.keySet().removeAll(of(procedure));
    abouts.remove(procedure);
    sources.remove(procedure);
  }

  /** Each procedure's source by the procedure's name. */
  Map<String, String> sources() {
    return sources;
  }

  /** The paths of a procedure's files. */
  synchronized List<String> of(String procedure) {
    return new ArrayList<>(looks.subMap(procedure + "/", procedure + "0").keySet());
  }

  /** Whether a file of this path was written. */
  boolean wrote(String path) {
    return looks.containsKey(path);
  }

  /** Whether a folder was made for files that were written. */
  boolean madeFolder(String path) {
    String next = looks.ceilingKey(path + "/");
    return next != null && next.startsWith(path + "/");
  }

  /** Whether a file is still as it was written. */
  boolean asWritten(String path, Path file) throws IOException {
    TreeSet<String> known = looks.get(path);
    return known != null && known.contains(Output.look(file));
  }

  /** The record's lines. */
  synchronized String text() {
    StringBuilder text = new StringBuilder();
    looks.forEach((path, all) -> all.forEach(look -> line(text, "wrote", look, path)));
    sources.forEach((procedure, source) -> line(text, "made", source, procedure));
    abouts.values().forEach(about -> text.append("about\t" + about.written() + "\n"));
    return text.toString();
  }

  private static void line(StringBuilder text, String kind, String first, String second) {
    text.append(kind).append('\t').append(first).append('\t').append(second).append('\n');
  }
}
