package passband.library;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.parse.Syntax;
import passband.source.SourceFile;
import passband.syntax.Tree;

/**
 * The files of one root, each read and parsed once, however many libraries take it, until it is
 * forgotten. Safe for several threads.
 */
public final class ParsedFiles {

  /** A file's tree, and what was found in its text alone. */
  record Parsed(Tree.File file, List<Diagnostic> faults) {}

  /** A place for a file that one thread fills while others wait for it. */
  private static final class Slot {
    private @Nullable Parsed parsed;
  }

  private final DisplayPaths names;
  private final SourceReader reader;
  private final Map<String, Slot> slots = new HashMap<>();

  /**
   * @param names what messages call the root and its files
   * @param reader gives the bytes of files under the root
   */
  public ParsedFiles(DisplayPaths names, SourceReader reader) {
    this.names = names;
    this.reader = reader;
  }

  DisplayPaths names() {
    return names;
  }

  SourceReader reader() {
    return reader;
  }

  /**
   * The same files with other texts in the place of some, as if they had been saved.
   *
   * @param texts by path as messages have it
   */
  public ParsedFiles with(Map<String, String> texts) {
    SourceReader edited =
        path -> {
          String text = texts.get(names.shown(path));
          return text == null ? reader.read(path) : text.getBytes(StandardCharsets.UTF_8);
        };
    ParsedFiles others = new ParsedFiles(names, edited);
    synchronized (slots) {
      for (Map.Entry<String, Slot> slot : slots.entrySet()) {
        if (!texts.containsKey(names.shown(slot.getKey()))) {
          others.slots.put(slot.getKey(), slot.getValue());
        }
      }
    }
    return others;
  }

  /** Lets go of a file that no further library takes. */
  public void forget(String path) {
    synchronized (slots) {
      slots.remove(path);
    }
  }

  /** Parses a file before it is asked for; a failure shows when it is. */
  public void prefetch(String path) {
    try {
      parsed(path);
    } catch (IOException | RuntimeException e) {
      // Asked for again, the file gives the same failure to one who can say it.
    }
  }

  Parsed parsed(String path) throws IOException {
    Slot slot;
    synchronized (slots) {
      slot = slots.computeIfAbsent(path, p -> new Slot());
    }
    synchronized (slot) {
      if (slot.parsed == null) {
        slot.parsed = parse(path);
      }
      return slot.parsed;
    }
  }

  private Parsed parse(String path) throws IOException {
    Diagnostics found = new Diagnostics();
    SourceFile source = Decoder.decode(names.shown(path), reader.read(path), found);
    Tree.File file = source == null ? empty(path) : Syntax.parse(source, found);
    return new Parsed(file, found.list());
  }

  /** A file with nothing in it, in the place of one that cannot be read. */
  Tree.File empty(String path) {
    return new Tree.File(new SourceFile(names.shown(path), ""), List.of(), List.of());
  }
}
