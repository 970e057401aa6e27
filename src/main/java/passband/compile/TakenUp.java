package passband.compile;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.library.Library;
import passband.resolve.Included;
import passband.resolve.Names;
import passband.resolve.Scope;
import passband.source.Span;
import passband.syntax.Include;
import passband.syntax.SharedPart;
import passband.syntax.Tree;

/**
 * Which parts and rules procedures take up. What they leave is looked at by itself: nobody may
 * think that it was checked where it was not.
 */
final class TakenUp {
  private final Library library;
  private final Set<String> blocks = new HashSet<>();

  TakenUp(Library library) {
    this.library = library;
  }

  /** What identifies a part or a rule among those of several groups of files. */
  static String key(Span block) {
    return block.file().path() + ":" + block.start();
  }

  /** {@link #key Keys} of the parts and rules that were taken up. */
  Set<String> blocks() {
    return blocks;
  }

  /** Whether this is a part or a rule, and no procedure takes it up. */
  boolean isLeft(Tree.Declaration one) {
    boolean loose = one instanceof SharedPart || one instanceof Tree.Rule;
    return loose && !blocks.contains(key(block(one)));
  }

  /** A procedure is planned with its parts, and its tests with their rules. */
  void add(Included procedure, Scope scope) {
    procedure.taken().forEach(one -> blocks.add(key(one.part().span())));
    for (Tree.Test test : procedure.whole().tests()) {
      for (Tree.Accept accept : test.accepts()) {
        if (accept.by() != null) {
          for (Tree.Rule rule : scope.all(Tree.Rule.class)) {
            if (rule.name().text().equals(accept.by().text())) {
              blocks.add(key(rule.span()));
            }
          }
        }
      }
    }
  }

  /**
   * What is found in the parts and rules that are left.
   *
   * @param own tells the files whose declarations are looked at
   * @param wanted whether a code may be said
   */
  void lookAtOthers(
      Predicate<Tree.File> own,
      Predicate<Code> wanted,
      Planner.TableFiles tables,
      Diagnostics later) {
    for (Tree.File file : library.files()) {
      if (!own.test(file)) {
        continue;
      }
      Scope scope = null;
      for (Tree.Declaration one : file.declarations()) {
        if (!isLeft(one)) {
          continue;
        }
        scope =
            scope != null
                ? scope
                : new Scope(library.visibleFrom(file), new Names(), new Diagnostics());
        Diagnostics found = new Diagnostics();
        look(one, scope, tables, found);
        found.removeIf(said -> !wanted.test(said.code()));
        later.takeAlone(found, block(one));
      }
    }
  }

  private static Span block(Tree.Declaration one) {
    return one instanceof SharedPart part
        ? part.span()
        : one instanceof Tree.Rule rule ? rule.span() : one.name().span();
  }

  private void look(
      Tree.Declaration one, Scope scope, Planner.TableFiles tables, Diagnostics found) {
    Alone alone = new Alone(scope, tables, found);
    if (one instanceof Tree.Rule rule) {
      alone.rule(rule);
    } else if (one instanceof SharedPart part) {
      Included lines = Included.in(part.lines(), scope::part, new Diagnostics());
      alone.part(lines.whole());
      found.removeIf(said -> isOfAnother(said.span(), lines));
      includes(part, scope, found);
    }
  }

  /** What a part includes is looked at by itself. */
  private static boolean isOfAnother(Span said, Included lines) {
    for (Included.Taken one : lines.taken()) {
      if (one.part().span().holds(said)) {
        return true;
      }
    }
    return false;
  }

  /** What no file here declares. */
  private void includes(SharedPart part, Scope scope, Diagnostics found) {
    for (Tree.Part one : part.lines().parts()) {
      if (one instanceof Include include && scope.part(include.name()) == null) {
        List<String> known = new ArrayList<>();
        for (Tree.File file : library.files()) {
          for (Tree.Declaration declared : file.declarations()) {
            if (declared instanceof SharedPart) {
              known.add(declared.name().text());
            }
          }
        }
        if (!known.contains(include.name().text())) {
          Scope.unknown(found, include.name(), "part", known);
        }
      }
    }
  }
}
