package passband.build;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.compile.Compiler;
import passband.diagnostic.Diagnostics;
import passband.library.Disk;
import passband.library.DisplayPaths;
import passband.library.Library;
import passband.library.LibraryRoot;
import passband.library.Paths;
import passband.library.SourceFiles;
import passband.library.SourceReader;
import passband.plan.Plan;

/** Compiles another version of one file of git's work tree, with all others as they are there. */
public final class WorkTree {
  private final Path top;

  /**
   * @param top the top of the work tree
   */
  public WorkTree(Path top) {
    this.top = top;
  }

  /** Where a version of a file belongs, from the top; null where that cannot be told. */
  public @Nullable String home(Path version) throws IOException {
    Path file = version.normalize();
    if (file.startsWith(top)) {
      return Paths.of(top.relativize(file));
    }
    List<String> found = new ArrayList<>();
    for (Path source : SourceFiles.in(top)) {
      if (source.getFileName().toString().equals(file.getFileName().toString())) {
        found.add(Paths.of(top.relativize(source)));
      }
    }
    return found.size() == 1 ? found.get(0) : null;
  }

  /**
   * The procedures that a version of a file has a say in: its own, or where it declares none, all
   * of its library.
   *
   * @param path from the top
   * @param version where the version's text is
   * @param ownOnly whether its own are enough
   */
  public List<Plan> plans(String path, Path version, boolean ownOnly, Diagnostics faults)
      throws IOException {
    byte[] bytes = Files.readAllBytes(version);
    Path file = top.resolve(path).normalize();
    Path root = LibraryRoot.of(Paths.folder(file), top, top);
    String inRoot = Paths.of(root.relativize(file));
    Disk disk = new Disk(root);
    SourceReader reader = asked -> asked.equals(inRoot) ? bytes : disk.read(asked);
    DisplayPaths names = DisplayPaths.from(top, root);
    List<Plan> own = compiled(List.of(inRoot), new Library(names, reader, faults), faults);
    if (ownOnly || !own.isEmpty() || faults.hasErrors()) {
      return own;
    }
    List<String> all = new ArrayList<>();
    SourceFiles.ofLibrary(root).forEach(source -> all.add(Paths.of(root.relativize(source))));
    return compiled(all, new Library(names, reader, faults), faults);
  }

  private static List<Plan> compiled(List<String> paths, Library library, Diagnostics faults)
      throws IOException {
    for (String path : paths) {
      try {
        library.load(path);
      } catch (NoSuchFileException e) {
        return List.of();
      }
    }
    return new Compiler(library, null, faults).compile();
  }
}
