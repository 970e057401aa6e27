package passband.resolve;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import passband.source.Span;
import passband.syntax.Word;

/**
 * Every place where a name is declared, and every place where one is used, recorded where the
 * compiler finds out what it stands for. Places are told apart by file path and offset, so that a
 * file that is read twice counts once.
 */
public final class Names {

  /** What a name does at a place. */
  public enum Role {
    /** It is declared. */
    DECLARATION,
    /** It stands for what is declared elsewhere. */
    USE,
    /** It is the name that the thing had in an earlier revision: {@code renamed from}. */
    FORMER
  }

  /** One place; a name that stands for several things has an occurrence for each. */
  public record Occurrence(Symbol symbol, Span span, Role role) {
    /** Whether it is declared here. */
    public boolean declaration() {
      return role == Role.DECLARATION;
    }
  }

  private final SortedMap<Span, Symbol> declared = new TreeMap<>();
  private final SortedMap<Span, SortedMap<Span, Role>> places = new TreeMap<>();

  /** Something is declared; nothing is recorded where it has no name. */
  void declare(String kind, @Nullable Word name, @Nullable Word title) {
    if (name != null) {
      declared.putIfAbsent(name.span(), new Symbol(kind, name, title));
      record(name, name, Role.DECLARATION);
    }
  }

  /**
   * A name stands for what is declared elsewhere.
   *
   * @param declaration the name where it is declared; null, and nothing is recorded, when the
   *     language itself gives it
   */
  public void use(@Nullable Word written, @Nullable Word declaration) {
    record(written, declaration, Role.USE);
  }

  /** A name is the former one of what is declared elsewhere; null, and not recorded, without. */
  public void former(@Nullable Word written, @Nullable Word declaration) {
    record(written, declaration, Role.FORMER);
  }

  private void record(@Nullable Word written, @Nullable Word declaration, Role role) {
    if (written != null && declaration != null) {
      places
          .computeIfAbsent(written.span(), span -> new TreeMap<>())
          .putIfAbsent(declaration.span(), role);
    }
  }

  /** All occurrences, in order of place. */
  public List<Occurrence> all() {
    List<Occurrence> all = new ArrayList<>();
    for (Map.Entry<Span, SortedMap<Span, Role>> place : places.entrySet()) {
      for (Map.Entry<Span, Role> one : place.getValue().entrySet()) {
        Symbol symbol = declared.get(one.getKey());
        if (symbol != null) {
          all.add(new Occurrence(symbol, place.getKey(), one.getValue()));
        }
      }
    }
    return all;
  }
}
