package passband.library;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Which sources of a library depend on some files of it: sources, or tables that sources name. */
public final class Dependents {
  private static final String PROCEDURE = "procedure ";

  private Dependents() {}

  /**
   * The sources that use one of the files, directly or through others, each with those of the files
   * that it uses; a source depends on itself.
   *
   * @param sources all of the library
   * @param files from the library's root, as are the sources
   */
  public static TreeMap<String, TreeSet<String>> of(
      Collection<String> sources, SourceReader reader, Collection<String> files) {
    UseGraph graph = new UseGraph(sources, reader);
    TreeMap<String, TreeSet<String>> naming = new TreeMap<>();
    List<String> tables = new ArrayList<>(files);
    tables.removeIf(file -> file.endsWith(SourceFiles.EXTENSION));
    if (!tables.isEmpty()) {
      for (String source : sources) {
        naming.put(source, named(source, reader, tables));
      }
    }
    TreeMap<String, TreeSet<String>> found = new TreeMap<>();
    for (String source : sources) {
      Set<String> reached = graph.from(source);
      TreeSet<String> through = new TreeSet<>(files);
      through.retainAll(reached);
      reached.forEach(one -> through.addAll(naming.getOrDefault(one, new TreeSet<>())));
      if (!through.isEmpty()) {
        found.put(source, through);
      }
    }
    return found;
  }

  /** The names of the procedures that a source declares, read off the starts of its lines alone. */
  public static List<String> procedures(byte[] source) {
    List<String> names = new ArrayList<>();
    for (String line : new String(source, StandardCharsets.UTF_8).split("\n")) {
      if (line.startsWith(PROCEDURE)) {
        String rest = line.substring(PROCEDURE.length()).strip();
        int end = 0;
        while (end < rest.length() && " \t\"{".indexOf(rest.charAt(end)) < 0) {
          end++;
        }
        names.add(rest.substring(0, end));
      }
    }
    return names;
  }

  /** Those of the tables whose path stands in quotes in a source. */
  private static TreeSet<String> named(String source, SourceReader reader, List<String> tables) {
    TreeSet<String> named = new TreeSet<>();
    String text;
    try {
      text = new String(reader.read(source), StandardCharsets.UTF_8);
    } catch (IOException e) {
      return named; // said when it is compiled
    }
    for (String table : tables) {
      String ending = table.substring(table.lastIndexOf('/') + 1) + "\"";
      for (int at = text.indexOf(ending); at >= 0; at = text.indexOf(ending, at + 1)) {
        int from = text.lastIndexOf('"', at - 1) + 1;
        String written = text.substring(from, at + ending.length() - 1);
        if (table.equals(Library.normalised(source, written))) {
          named.add(table);
        }
      }
    }
    return named;
  }
}
