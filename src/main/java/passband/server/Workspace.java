package passband.server;

import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import passband.diagnostic.Diagnostics;
import passband.edit.Analysis;
import passband.edit.Symbols;
import passband.library.Library;
import passband.library.ParsedFiles;
import passband.library.SourceReader;

/**
 * The texts that are open in the editor over the files on the disk, and what they come to. One
 * thread asks; analyses may read files on another.
 */
final class Workspace {
  private static final Pattern UPWARD = Pattern.compile("(?m)^[ \\t]*use[ \\t]+\"((?:\\.\\./)*)");

  /** A document by its library root and its path below that. */
  record Place(String root, String path) {}

  /** One library root with what is known of its files. */
  private static final class Root {
    private final ParsedFiles parsed;
    private final Map<String, Analysis> analyses = new HashMap<>();
    private Symbols everything;

    Root(SourceReader reader) {
      this.parsed = new ParsedFiles("", reader);
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
  String text(String uri) {
    return open.get(uri);
  }

  /** Takes a document's text from the editor; null when it is closed. */
  void put(String uri, String text) {
    forget(uri);
    if (text == null) {
      open.remove(uri);
    } else {
      open.put(uri, text);
    }
    places.remove(uri); // it may look further up than before
    forget(uri);
  }

  /** A file has changed: whatever was made of it is made anew. */
  void forget(String uri) {
    Place place = place(uri);
    Root root = roots.get(place.root);
    if (root != null) {
      root.parsed.forget(place.path);
      root.analyses.values().removeIf(a -> a.consulted(place.path));
      root.everything = null;
    }
  }

  /** Where a document belongs: the deepest of the editor's folders, or as far up as it looks. */
  Place place(String uri) {
    return places.computeIfAbsent(uri, this::found);
  }

  private Place found(String uri) {
    String root = "";
    for (String folder : given) {
      if (uri.startsWith(folder) && folder.length() > root.length()) {
        root = folder;
      }
    }
    if (root.isEmpty()) {
      root = uri.substring(0, uri.lastIndexOf('/') + 1);
      for (int up = upward(open.getOrDefault(uri, "")); up > 0 && root.length() > 8; up--) {
        root = root.substring(0, root.lastIndexOf('/', root.length() - 2) + 1);
      }
    }
    return new Place(root, decoded(uri.substring(root.length())));
  }

  /** How many folders the uses of a text go up at most. */
  private static int upward(String text) {
    int most = 0;
    Matcher use = UPWARD.matcher(text);
    while (use.find()) {
      most = Math.max(most, use.group(1).length() / 3);
    }
    return most;
  }

  private static String decoded(String path) {
    try {
      return new URI(path).getPath();
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

  private Root root(String rootUri) {
    return roots.computeIfAbsent(rootUri, uri -> new Root(reader(uri)));
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
  Analysis analysis(String uri) {
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

  /** Where everything is declared and named in a root's files, used by the document or not. */
  Symbols everything(String uri) throws IOException {
    Place place = place(uri);
    Root root = root(place.root);
    if (root.everything == null) {
      Library library = new Library(root.parsed, new Diagnostics());
      TreeSet<String> paths = new TreeSet<>(folders.sources(place.root));
      open.keySet().stream()
          .map(this::place)
          .filter(p -> p.root.equals(place.root))
          .forEach(p -> paths.add(p.path));
      for (String path : paths) {
        library.load(path);
      }
      root.everything = new Symbols(library);
    }
    return root.everything;
  }
}
