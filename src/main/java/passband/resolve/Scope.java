package passband.resolve;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Spelling;
import passband.source.Span;
import passband.syntax.SharedPart;
import passband.syntax.Tree;
import passband.syntax.Word;

/** The declarations that a file sees: its own, and those of the files it uses. */
public final class Scope {
  private final Map<Named, Tree.Declaration> declarations = new LinkedHashMap<>();
  private final Names names;
  private final Diagnostics diagnostics;

  /** What a declaration is found by. */
  private record Named(String kind, String name) {}

  /** The declarations of the files, in order; a name declared twice is an error. */
  public Scope(List<Tree.File> files, Names names, Diagnostics diagnostics) {
    this.names = names;
    this.diagnostics = diagnostics;
    for (Tree.File file : files) {
      for (Tree.Declaration declaration : file.declarations()) {
        add(declaration);
      }
    }
  }

  private void add(Tree.Declaration declaration) {
    Named named = new Named(declaration.kind(), declaration.name().text());
    Tree.Declaration first = declarations.putIfAbsent(named, declaration);
    if (first != null && first != declaration) {
      sayTwice(declaration.kind() + " ", first.name(), declaration.name());
    }
  }

  private void sayTwice(String kind, Word first, Word second) {
    boolean inOrder = first.span().compareTo(second.span()) <= 0;
    duplicate(diagnostics, kind, inOrder ? first : second, inOrder ? second : first);
  }

  /** Says that a name is declared twice, at the second place. */
  public static void duplicate(Diagnostics diagnostics, String kind, Word first, Word second) {
    diagnostics
        .say(Code.DUPLICATE_NAME, second.span(), "%s'%s' is declared twice", kind, second.text())
        .note(first.span(), "first declared here");
  }

  /**
   * The declaration of this kind and name; null, with the fault said at the name, when there is
   * none.
   */
  public <D extends Tree.Declaration> @Nullable D find(Class<D> type, String kind, Word name) {
    Tree.Declaration found = declarations.get(new Named(kind, name.text()));
    if (found == null) {
      List<Word> declared =
          declarations.values().stream()
              .filter(type::isInstance)
              .map(Tree.Declaration::name)
              .toList();
      unknownAmong(diagnostics, name, kind, "", declared);
      return null;
    }
    names.use(name, found.name());
    return type.cast(found);
  }

  /** The part of this name; null, and nothing is said, when there is none. */
  public @Nullable SharedPart part(Word name) {
    Tree.Declaration found = declarations.get(new Named("part", name.text()));
    if (found != null) {
      names.use(name, found.name());
    }
    return (SharedPart) found;
  }

  /** Where it is recorded what names stand for. */
  public Names names() {
    return names;
  }

  /** All declarations of a type. */
  public <D extends Tree.Declaration> List<D> all(Class<D> type) {
    List<D> all = new ArrayList<>();
    for (Tree.Declaration declaration : declarations.values()) {
      if (type.isInstance(declaration)) {
        all.add(type.cast(declaration));
      }
    }
    return all;
  }

  /** Says that nothing of this kind has the name, with the nearest name that there is. */
  public static void unknown(
      Diagnostics diagnostics, Word name, String kind, Collection<String> known) {
    unknown(diagnostics, name, kind, "", known);
  }

  /**
   * The same with a place.
   *
   * @param where where it was looked for, such as {@code " on the outlet 'mono-1'"}
   */
  public static DiagnosticBuilder unknown(
      Diagnostics diagnostics, Word name, String kind, String where, Collection<String> known) {
    return say(diagnostics, name, kind, where, known);
  }

  /**
   * The same, with the place where the nearest name, or the only one, is declared: that may be the
   * one that is misspelt.
   */
  public static DiagnosticBuilder unknownAmong(
      Diagnostics diagnostics, Word name, String kind, String where, List<Word> declared) {
    List<String> known = declared.stream().map(Word::text).toList();
    DiagnosticBuilder said = say(diagnostics, name, kind, where, known);
    String near = declared.size() == 1 ? known.get(0) : Spelling.nearest(name.text(), known);
    if (near != null) {
      said.note(declared.get(known.indexOf(near)).span(), "'%s' is declared here", near);
    } else if (!declared.isEmpty()) {
      said.note(declared.get(0).span(), "the first that is known is declared here");
    }
    return said;
  }

  private static DiagnosticBuilder say(
      Diagnostics diagnostics, Word name, String kind, String where, Collection<String> known) {
    DiagnosticBuilder said =
        diagnostics.say(
            Code.UNKNOWN_NAME, name.span(), "there is no %s '%s'%s", kind, name.text(), where);
    String near = Spelling.nearest(name.text(), known);
    if (near != null || (!known.isEmpty() && known.size() <= 12)) {
      said.meant(near, "known here: %s", String.join(", ", known.stream().sorted().toList()));
    }
    return said;
  }

  /** Says each name that occurs twice in a list of declared things. */
  public static <T> void distinct(
      Diagnostics diagnostics, String kind, List<T> things, Function<T, Word> name) {
    for (int i = 0; i < things.size(); i++) {
      for (int j = 0; j < i; j++) {
        Word first = name.apply(things.get(j));
        Word second = name.apply(things.get(i));
        if (first.text().equals(second.text())) {
          duplicate(diagnostics, kind + " ", first, second);
          break;
        }
      }
    }
  }

  /** The place of a declaration's name. */
  public static Span place(Tree.Declaration declaration) {
    return declaration.name().span();
  }
}
