package passband.library;

import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Reason;
import passband.source.SourceFile;
import passband.source.Span;
import passband.syntax.Tree;
import passband.syntax.Word;

/** The files of one library root: each is read and parsed once, however many use it. */
public final class Library {
  private final ParsedFiles parsed;
  private final DisplayPaths names;
  private final SourceReader reader;
  private final Diagnostics diagnostics;
  private final Set<String> consulted = new TreeSet<>();
  private final Map<String, Tree.File> files = new TreeMap<>();
  private final Map<String, List<String>> uses = new LinkedHashMap<>();

  /**
   * @param names what messages call the root and its files
   * @param reader gives the bytes of files under the root
   */
  public Library(DisplayPaths names, SourceReader reader, Diagnostics diagnostics) {
    this(new ParsedFiles(names, reader), diagnostics);
  }

  /**
   * @param parsed the files of the root, which other libraries may take as well
   */
  public Library(ParsedFiles parsed, Diagnostics diagnostics) {
    this.parsed = parsed;
    this.names = parsed.names();
    this.reader = parsed.reader();
    this.diagnostics = diagnostics;
  }

  /**
   * Reads a file and all that it uses.
   *
   * @param path relative to the root, {@code /} between folders
   */
  public void load(String path) throws IOException {
    if (!files.containsKey(path)) {
      parse(path);
      loadUses(path);
    }
  }

  private void parse(String path) throws IOException {
    consulted.add(path);
    ParsedFiles.Parsed one = parsed.parsed(path);
    diagnostics.addAll(one.faults());
    files.put(path, one.file());
  }

  /**
   * Follows uses depth first; the files on the way here are known, so that a circle is seen where
   * it closes.
   */
  private void loadUses(String start) {
    Deque<String> open = new ArrayDeque<>();
    Deque<List<Tree.Use>> left = new ArrayDeque<>();
    open.push(start);
    left.push(usesIn(start));
    while (!open.isEmpty()) {
      if (left.peek().isEmpty()) {
        open.pop();
        left.pop();
        continue;
      }
      Tree.Use use = left.peek().remove(0);
      String target = target(open.peek(), use.path());
      if (target == null) {
        continue;
      }
      uses.computeIfAbsent(open.peek(), k -> new ArrayList<>()).add(target);
      if (open.contains(target)) {
        sayCircle(use.path(), target, open);
      } else if (!files.containsKey(target) && read(target, use.path())) {
        open.push(target);
        left.push(usesIn(target));
      }
    }
  }

  private List<Tree.Use> usesIn(String path) {
    Tree.File file = files.get(path);
    return file == null ? new ArrayList<>() : new ArrayList<>(file.uses());
  }

  private void sayCircle(Word use, String target, Deque<String> open) {
    List<String> circle = new ArrayList<>();
    for (String file : open) {
      circle.add(0, names.shown(file));
      if (file.equals(target)) {
        break;
      }
    }
    circle.add(names.shown(target));
    diagnostics.say(Code.USE_CYCLE, use.span(), "circular use: %s", String.join(" → ", circle));
  }

  private boolean read(String target, Word use) {
    try {
      parse(target);
      return true;
    } catch (IOException e) {
      sayUnreadable(use, e);
      files.put(target, parsed.empty(target));
      return false;
    }
  }

  private void sayUnreadable(Word use, IOException e) {
    if (e instanceof OutsideRootException) {
      sayOutside(use);
    } else {
      String why = e instanceof NoSuchFileException ? "there is no such file" : Reason.of(e);
      diagnostics.say(Code.FILE_NOT_FOUND, use.span(), "cannot read '%s': %s", use.text(), why);
    }
  }

  /** Says that a path leads out of the library, through a symbolic link for one. */
  public static final class OutsideRootException extends IOException {
    private static final long serialVersionUID = 1L;

    /** With a message for a person. */
    public OutsideRootException(String message) {
      super(message);
    }
  }

  private void sayOutside(Word use) {
    diagnostics
        .say(Code.USE_OUTSIDE_ROOT, use.span(), "%s", LibraryRoot.outside(use.text(), names.root()))
        .hint("write a path relative to this file that stays under the root");
  }

  /**
   * The path relative to the root that a use in a file names; null, with the fault said, when it
   * leaves the root.
   */
  private @Nullable String target(String from, Word use) {
    String path = normalised(from, use.text());
    if (path == null) {
      sayOutside(use);
    }
    return path;
  }

  /**
   * Resolves a relative path against the folder of a file; null when it is absolute, empty or
   * leaves the root.
   */
  public static @Nullable String normalised(String from, String relative) {
    if (relative.isEmpty()
        || relative.startsWith("/")
        || relative.indexOf('\\') >= 0
        || drive(relative)) {
      return null;
    }
    List<String> parts = new ArrayList<>(Arrays.asList(from.split("/")));
    parts.remove(parts.size() - 1);
    for (String part : relative.split("/")) {
      if (part.equals("..")) {
        if (parts.isEmpty()) {
          return null;
        }
        parts.remove(parts.size() - 1);
      } else if (!part.isEmpty() && !part.equals(".") && part.indexOf('\0') < 0) {
        parts.add(part);
      } else if (part.indexOf('\0') >= 0) {
        return null;
      }
    }
    return parts.isEmpty() ? null : String.join("/", parts);
  }

  /** Whether a path starts with a letter and a colon, as Windows names a drive. */
  private static boolean drive(String path) {
    int letter = path.charAt(0) | 0x20;
    return path.length() > 1 && path.charAt(1) == ':' && letter >= 'a' && letter <= 'z';
  }

  /** The text of a file in the same folder as a source; null where there is none to read. */
  public @Nullable SourceFile beside(SourceFile source, String name) {
    String path = normalised(names.path(source.path()), name);
    if (path == null) {
      return null;
    }
    consulted.add(path);
    try {
      return Decoder.decode(names.shown(path), reader.read(path), diagnostics);
    } catch (IOException e) {
      return null;
    }
  }

  /**
   * The text of a table file named in a source; null, with the fault said, when it cannot be read.
   */
  public @Nullable SourceFile table(Span in, Word name) {
    String from = names.path(in.file().path());
    String path = target(from, name);
    if (path == null) {
      return null;
    }
    consulted.add(path);
    try {
      return Decoder.decode(names.shown(path), reader.read(path), diagnostics);
    } catch (IOException e) {
      sayUnreadable(name, e);
      return null;
    }
  }

  /** The paths of all files that were asked for, there or not: sources, tables and records. */
  public Set<String> consulted() {
    return consulted;
  }

  /** A file's path relative to the root. */
  public String pathOf(Tree.File file) {
    return names.path(file.source().path());
  }

  /** All files read, by path. */
  public Collection<Tree.File> files() {
    return files.values();
  }

  /** What the file itself uses, in order; what could not be read is left out. */
  public List<Tree.File> usedBy(Tree.File file) {
    List<Tree.File> used = new ArrayList<>();
    for (String path : uses.getOrDefault(pathOf(file), List.of())) {
      Tree.File one = files.get(path);
      if (one != null) {
        used.add(one);
      }
    }
    return used;
  }

  /** The file and all that it uses, itself first, then in the order of use. */
  public List<Tree.File> visibleFrom(Tree.File file) {
    List<Tree.File> visible = new ArrayList<>();
    reached(pathOf(file), uses).forEach(path -> visible.add(files.get(path)));
    return visible;
  }

  /**
   * What can be reached from a file through uses, itself first.
   *
   * @param uses what each file uses; one that is missing uses nothing
   */
  public static Set<String> reached(String start, Map<String, List<String>> uses) {
    Set<String> reached = new LinkedHashSet<>();
    List<String> next = new ArrayList<>();
    next.add(start);
    for (int i = 0; i < next.size(); i++) {
      if (reached.add(next.get(i))) {
        next.addAll(uses.getOrDefault(next.get(i), List.of()));
      }
    }
    return reached;
  }
}
