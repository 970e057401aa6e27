package passband.server;

import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentSkipListMap;
import org.jspecify.annotations.Nullable;
import passband.edit.Analysis;
import passband.edit.LibraryCheck;
import passband.edit.WholeLibrary;
import passband.library.DisplayPaths;
import passband.library.LibraryRoot;
import passband.library.ParsedFiles;
import passband.library.SourceReader;

/**
 * The texts that are open in the editor over the files on the disk, and what they come to. One
 * thread asks; analyses may read files on another.
 */
final class Workspace {
  /** A document by its library root and its path below that. */
  record Place(String root, String path) {}

  /** One library root with what is known of its files. */
  private static final class Root {
    private final ParsedFiles parsed;
    private final Map<String, Analysis> analyses = new HashMap<>();
    private final LibraryCheck check;
    private @Nullable WholeLibrary everything;

    Root(String uri, SourceReader reader) {
      this.parsed = new ParsedFiles(DisplayPaths.prefixed(named(uri), ""), reader);
      this.check = new LibraryCheck(parsed, reader);
    }
  }

  private final Folders folders;
  private final List<String> given = new ArrayList<>();
  private final Map<String, Root> roots = new HashMap<>();
  private final Map<String, String> open = new ConcurrentSkipListMap<>();
  private final Map<String, Place> places = new ConcurrentHashMap<>();

  Workspace(Folders folders) {
    this.folders = folders;
  }

  /** Makes a folder of the editor's known; its files are one library. */
  void add(String folderUri) {
    given.add(folderUri.endsWith("/") ? folderUri : folderUri + "/");
  }

  /** The documents that are open. */
  List<String> open() {
    return List.copyOf(open.keySet());
  }

  /** The text of an open document; null when it is not open. */
  @Nullable String text(String uri) {
    return open.get(uri);
  }

  /** Takes a document's text from the editor; null when it is closed. */
  void put(String uri, @Nullable String text) {
    if (text == null) {
      open.remove(uri);
    } else {
      open.put(uri, text);
    }
    forget(uri);
  }

  /** A file has changed: whatever was made of it is made anew. */
  void forget(String uri) {
    if (uri.endsWith("/" + LibraryRoot.MARKER)) {
      places.clear();
      roots.clear();
    }
    Place place = place(uri);
    Root root = roots.get(place.root);
    if (root != null) {
      root.parsed.forget(place.path);
      root.analyses.values().removeIf(a -> a.consulted(place.path));
      root.check.forget(place.path);
      root.everything = null;
    }
  }

  /** Where a document belongs. */
  Place place(String uri) {
    return places.computeIfAbsent(uri, this::found);
  }

  /**
   * A document that was never saved uses files as if it lay in the folder that the editor opened
   * first.
   */
  private Place found(String uri) {
    boolean nowhere = uri.indexOf('/') < 0;
    String own =
        nowhere && !given.isEmpty() ? given.get(0) : uri.substring(0, uri.lastIndexOf('/') + 1);
    String root =
        LibraryRoot.of(
            own,
            Workspace::above,
            folder -> folders.marked(folder) && folders.holds(folder, own),
            otherwise(own));
    return new Place(root, nowhere ? uri : decoded(uri.substring(root.length())));
  }

  /** The deepest of the editor's folders that a folder is in, else the folder itself. */
  private String otherwise(String own) {
    String deepest = "";
    for (String folder : given) {
      if (own.startsWith(folder)
          && folder.length() > deepest.length()
          && folders.holds(folder, own)) {
        deepest = folder;
      }
    }
    return deepest.isEmpty() ? own : deepest;
  }

  /** The folder above one, both with a closing {@code /}; null at the top. */
  private static @Nullable String above(String folder) {
    int slash = folder.lastIndexOf('/', folder.length() - 2);
    return slash < 0 || folder.endsWith("//") ? null : folder.substring(0, slash + 1);
  }

  private static String decoded(String path) {
    try {
      String decoded = new URI(path).getPath();
      return decoded == null ? path : decoded; // of a document on no disk there is none
    } catch (URISyntaxException e) {
      return path;
    }
  }

  /** The document's identifier of a file of a root. */
  String uri(String root, String path) {
    for (Map.Entry<String, Place> known : places.entrySet()) {
      if (known.getValue().root.equals(root) && known.getValue().path.equals(path)) {
        return known.getKey();
      }
    }
    try {
      return root + new URI(null, null, path, null).toASCIIString();
    } catch (URISyntaxException e) {
      return root + path;
    }
  }

  /** The identifiers of the files of a document's root. */
  Replies.Uris uris(String uri) {
    return path -> uri(place(uri).root, path);
  }

  /** A root's folder as a person writes it. */
  private static String named(String rootUri) {
    String path = rootUri.startsWith("file:") ? decoded(rootUri) : rootUri;
    return path.endsWith("/") && path.length() > 1 ? path.substring(0, path.length() - 1) : path;
  }

  private Root root(String rootUri) {
    return roots.computeIfAbsent(rootUri, uri -> new Root(uri, reader(uri)));
  }

  private SourceReader reader(String rootUri) {
    SourceReader disk = folders.reader(rootUri);
    return path -> {
      String text = open.get(uri(rootUri, path));
      return text == null
          ? disk.read(path)
          : text.getBytes(java.nio.charset.StandardCharsets.UTF_8);
    };
  }

  /** What a document comes to; null when it cannot be read. */
  @Nullable Analysis analysis(String uri) {
    Place place = place(uri);
    Root root = root(place.root);
    Analysis analysis = root.analyses.get(place.path);
    if (analysis == null) {
      try {
        analysis = Analysis.of(root.parsed, place.path);
      } catch (IOException e) {
        return null;
      }
      root.analyses.put(place.path, analysis);
    }
    return analysis;
  }

  /** All files of a document's root together, used by the document or not. */
  WholeLibrary everything(String uri) throws IOException {
    Place place = place(uri);
    Root root = root(place.root);
    if (root.everything == null) {
      Set<String> paths = openIn(place.root);
      paths.addAll(folders.sources(place.root));
      root.everything = WholeLibrary.of(root.parsed, paths);
    }
    return root.everything;
  }

  /** The open documents of a root. */
  private Set<String> openIn(String root) {
    Set<String> paths = new TreeSet<>();
    for (String uri : open.keySet()) {
      if (place(uri).root.equals(root)) {
        paths.add(place(uri).path);
      }
    }
    return paths;
  }

  /**
   * The files of a root: those of its folder where that is known to be a library's, else only the
   * open ones, since any folder may hold a whole disk.
   */
  Set<String> paths(String root) throws IOException {
    Set<String> paths = openIn(root);
    if (given.contains(root) || folders.marked(root)) {
      paths.addAll(folders.sources(root));
    }
    return paths;
  }

  /** The files of a document's library. */
  Set<String> files(String uri) throws IOException {
    return paths(place(uri).root);
  }

  /**
   * A library that documents are open of.
   *
   * @param open these documents
   */
  record Opened(String root, LibraryCheck check, Set<String> open) {}

  /** The libraries that documents are open of. */
  List<Opened> opened() {
    TreeSet<String> names = new TreeSet<>();
    open.keySet().forEach(uri -> names.add(place(uri).root));
    return names.stream().map(name -> new Opened(name, root(name).check, openIn(name))).toList();
  }
}
