package passband.edit;

import java.io.IOException;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import passband.compile.Compiler;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.library.Library;
import passband.library.ParsedFiles;
import passband.source.SourceFile;

/** The files of a library's root compiled together, for what goes through all of them. */
public final class WholeLibrary {
  private final ParsedFiles parsed;
  private final List<String> paths;
  private final Symbols symbols;
  private final List<Diagnostic> errors;

  private WholeLibrary(
      ParsedFiles parsed, List<String> paths, Symbols symbols, List<Diagnostic> errors) {
    this.parsed = parsed;
    this.paths = paths;
    this.symbols = symbols;
    this.errors = errors;
  }

  /**
   * Of these files and all that they use.
   *
   * @param paths relative to the root of the parsed files
   * @throws IOException when one of them cannot be read
   */
  public static WholeLibrary of(ParsedFiles parsed, Collection<String> paths) throws IOException {
    Diagnostics found = new Diagnostics();
    Library library = new Library(parsed, found);
    for (String path : paths) {
      library.load(path);
    }
    Compiler compiler = new Compiler(library, null, found);
    compiler.compile();
    List<Diagnostic> errors = found.list().stream().filter(Diagnostic::isError).toList();
    return new WholeLibrary(parsed, List.copyOf(paths), new Symbols(compiler.names()), errors);
  }

  /** Where everything is declared and named. */
  public Symbols symbols() {
    return symbols;
  }

  /** The errors in all files, in order of place. */
  public List<Diagnostic> errors() {
    return errors;
  }

  /** The library as it is after an edit of its sources and tables. */
  WholeLibrary with(TextEdits edits) throws IOException {
    Map<String, String> texts = new HashMap<>();
    for (SourceFile file : edits.files()) {
      texts.put(file.path(), edits.applied(file));
    }
    return of(parsed.with(texts), paths);
  }
}
