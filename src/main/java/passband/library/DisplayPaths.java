package passband.library;

import java.nio.file.Path;

/**
 * What messages call a library's root and the files in it. Within a library, a path starts at the
 * root; a person wants it to start at the working folder.
 */
public final class DisplayPaths {
  private final String root;
  private final String prefix;

  /** The working folder below the root: empty, or with a closing {@code /}. */
  private final String inside;

  private DisplayPaths(String root, String prefix, String inside) {
    this.root = root;
    this.prefix = prefix;
    this.inside = inside;
  }

  /**
   * Puts the same before every path.
   *
   * @param root the root's name; empty where it has none
   * @param prefix empty, or with a closing {@code /} or {@code :}
   */
  public static DisplayPaths prefixed(String root, String prefix) {
    return new DisplayPaths(root, prefix, "");
  }

  /**
   * Paths from the working folder where it is in the root or holds it, else from the top of the
   * disk; both folders absolute.
   */
  public static DisplayPaths from(Path workingDirectory, Path root) {
    String name = Paths.of(root);
    if (workingDirectory.equals(root)) {
      return prefixed(name, "");
    }
    if (workingDirectory.startsWith(root)) {
      return new DisplayPaths(name, "", Paths.of(root.relativize(workingDirectory)) + "/");
    }
    Path shown = root.startsWith(workingDirectory) ? workingDirectory.relativize(root) : root;
    return prefixed(name, Paths.of(shown) + "/");
  }

  /** The root's name; empty where it has none. */
  public String root() {
    return root;
  }

  /** What messages call the file at a path below the root. */
  public String shown(String path) {
    int common = 0;
    int slash = inside.indexOf('/');
    while (slash >= 0 && path.startsWith(inside.substring(0, slash + 1))) {
      common = slash + 1;
      slash = inside.indexOf('/', common);
    }
    int up = 0;
    while (slash >= 0) {
      up++;
      slash = inside.indexOf('/', slash + 1);
    }
    return prefix + "../".repeat(up) + path.substring(common);
  }

  /** The path below the root of a file that messages call so. */
  public String path(String shown) {
    String folder = inside;
    String rest = shown.substring(prefix.length());
    while (rest.startsWith("../")) {
      folder = folder.substring(0, folder.lastIndexOf('/', folder.length() - 2) + 1);
      rest = rest.substring("../".length());
    }
    return folder + rest;
  }
}
