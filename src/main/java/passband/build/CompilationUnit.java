package passband.build;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import passband.compile.Compiler;
import passband.diagnostic.Diagnostics;
import passband.library.Decoder;
import passband.library.Library;
import passband.library.LibraryRoot;
import passband.library.Root;
import passband.library.UsageException;
import passband.plan.Plan;
import passband.plan.Profile;
import passband.source.SourceFile;
import passband.source.Span;
import passband.syntax.Word;

/**
 * A file that no other uses, and all that it uses: what is compiled together.
 *
 * @param start the file, relative to the root
 * @param files it and what it uses, as far as the use lines tell; empty where it alone is named
 * @param own of these, the ones that no group before has
 * @param given of these, the ones that the command line names
 * @param analyzers further files, in which the analyzer of the command line may be
 */
public record CompilationUnit(
    Root root,
    String start,
    Set<String> files,
    Set<String> own,
    Set<String> given,
    Set<String> analyzers) {

  /**
   * What became of a group.
   *
   * @param declared what the files that are named declare besides procedures, made when it is asked
   *     for: only a comparison needs it
   */
  public record Compiled(List<Plan> plans, Supplier<List<Profile>> declared, Found found) {}

  /**
   * What was found in a group.
   *
   * @param names of the procedures
   * @param usedAllows the places of the allows that suppressed something
   * @param takenUp the parts and rules that procedures took up
   * @param silent whether there was nothing to say, and no allow of a shared file did anything
   * @param consulted every file that was asked for, there or not
   */
  public record Found(
      List<Word> names,
      Diagnostics diagnostics,
      Set<Span> usedAllows,
      Set<String> takenUp,
      boolean silent,
      Set<Path> consulted) {}

  /** What messages call it. */
  public String place() {
    return root.names().shown(start);
  }

  /** What tells it from other groups; with another set of files it is another. */
  public String key() {
    return root.names().root()
        + " "
        + start
        + " "
        + String.join(" ", own)
        + " | "
        + String.join(" ", given)
        + " | "
        + String.join(" ", analyzers);
  }

  /** What was found when it was last compiled, which was nothing but its names. */
  public Found unchanged(BuildRecord.Entry entry, Path base) throws IOException {
    root.done(files);
    List<Word> names = new ArrayList<>();
    for (BuildRecord.Name name : entry.names()) {
      Path file = base.resolve(name.path());
      SourceFile source = Decoder.decode(name.path(), Files.readAllBytes(file), new Diagnostics());
      if (source == null) {
        throw new IOException(name.path() + " is not valid UTF-8");
      }
      names.add(shortened(new Word(name.name(), new Span(source, name.start(), name.end()))));
    }
    Set<Path> consulted = new TreeSet<>();
    entry.in().keySet().forEach(path -> consulted.add(base.resolve(path).normalize()));
    return new Found(names, new Diagnostics(), Set.of(), entry.takenUp(), true, consulted);
  }

  /**
   * Compiles the procedures of its own files.
   *
   * @param analyzer null for each procedure's own
   */
  public Compiled compiled(@Nullable String analyzer) throws UsageException {
    Diagnostics diagnostics = new Diagnostics();
    if (files.isEmpty()) {
      root.prefetch(start);
    }
    Library library = new Library(root.parsed(), diagnostics);
    load(library, start);
    for (String file : given) {
      load(library, file);
    }
    for (String file : analyzers) {
      load(library, file);
    }
    Compiler compiler =
        new Compiler(
            library,
            analyzer,
            diagnostics,
            file -> {
              String path = library.pathOf(file);
              return own.contains(path) || !files.contains(path) && !analyzers.contains(path);
            });
    List<Plan> plans = compiler.compile();
    root.done(files);
    Set<Path> consulted = new TreeSet<>();
    for (String path : library.consulted()) {
      Path place = root.resolve(path);
      if (place != null) { // what cannot be there cannot come
        consulted.add(place);
      }
    }
    List<Word> names = new ArrayList<>();
    plans.forEach(plan -> names.add(shortened(plan.name())));
    Set<Span> usedAllows = compiler.usedAllows();
    boolean silent =
        diagnostics.list().isEmpty() && areAllOf(root.names().shown(start), usedAllows);
    return new Compiled(
        plans,
        () -> compiler.declared(file -> isNamed(library.pathOf(file))),
        new Found(names, diagnostics, usedAllows, compiler.takenUp(), silent, consulted));
  }

  private boolean isNamed(@Nullable String path) {
    return path != null && (files.isEmpty() ? path.equals(start) : given.contains(path));
  }

  private static boolean areAllOf(String file, Set<Span> spans) {
    for (Span span : spans) {
      if (!span.file().path().equals(file)) {
        return false;
      }
    }
    return true;
  }

  /** A name in a file that ends with its line: the rest of the text need not be kept for it. */
  private static Word shortened(Word name) {
    SourceFile file = name.span().file();
    int line = name.span().line();
    int end = line < file.lineCount() ? file.lineStart(line + 1) : file.text().length();
    SourceFile head = new SourceFile(file.path(), file.text().substring(0, end));
    return new Word(name.text(), new Span(head, name.span().start(), name.span().end()));
  }

  private void load(Library library, String file) throws UsageException {
    try {
      library.load(file);
    } catch (Library.OutsideRootException e) {
      throw new UsageException(LibraryRoot.outside(root.names().shown(file), root.names().root()));
    } catch (IOException e) {
      throw new UsageException("cannot read " + root.names().shown(file) + ": " + e.getMessage());
    }
  }
}
