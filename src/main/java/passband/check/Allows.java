package passband.check;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.diagnostic.Spelling;
import passband.source.Span;
import passband.syntax.SharedPart;
import passband.syntax.Tree;

/**
 * Suppresses the warnings, and the errors that can be allowed, that an {@code allow} covers; says
 * which allows suppress nothing, give no reason, name no code, or name an error that stands.
 */
public final class Allows {
  private Allows() {}

  /**
   * Takes what is covered out of the diagnostics.
   *
   * @param before the allows that suppressed something before
   * @param sound whether everything was looked at; if not, an allow may be for what was not reached
   * @param leftOut tells the declarations that nothing takes up: an allow there may be for whoever
   *     does
   * @return the places of the allows that suppressed something
   */
  public static Set<Span> apply(
      Collection<Tree.File> files,
      Diagnostics diagnostics,
      Set<Span> before,
      boolean sound,
      Predicate<Tree.Declaration> leftOut) {
    Set<Span> used = new HashSet<>();
    for (Tree.File file : files) {
      for (Tree.Declaration declaration : file.declarations()) {
        boolean ofProfile =
            !(declaration instanceof Tree.Procedure
                || declaration instanceof SharedPart
                || declaration instanceof Tree.Rule);
        boolean left = leftOut.test(declaration);
        for (Tree.Allow allow : of(declaration)) {
          boolean whole = sound && !left && !before.contains(allow.span());
          if (apply(allow, ofProfile, diagnostics, whole)) {
            used.add(allow.span());
          }
        }
      }
    }
    return used;
  }

  private static boolean apply(
      Tree.Allow allow, boolean ofProfile, Diagnostics diagnostics, boolean sound) {
    Code code = Code.find(allow.code().text());
    if (code == null) {
      sayUnknown(allow, diagnostics);
    } else if (!code.allowable()) {
      diagnostics.say(
          Code.ALLOW_OF_ERROR,
          allow.code().span(),
          "'%s' is an error that cannot be allowed",
          code.id());
    } else if (allow.reason().text().isBlank()) {
      sayEmpty(allow, code, diagnostics);
      return suppress(allow, ofProfile, code, diagnostics) > 0;
    } else if (suppress(allow, ofProfile, code, diagnostics) > 0) {
      return true;
    } else if (sayNotReached(allow, code, diagnostics)) {
      return false;
    } else if (sound) {
      diagnostics
          .say(
              Code.ALLOW_UNUSED,
              allow.span(),
              "this 'allow' suppresses nothing: there is no '%s' here",
              code.id())
          .hint("remove it")
          .fix(Fix.removeLines("remove the line", allow.span()).asPreferred());
    }
    return false;
  }

  /**
   * Whether a message names the block of an {@code allow} and stands in another one: that is said
   * even where not everything was looked at.
   */
  private static boolean sayNotReached(Tree.Allow allow, Code code, Diagnostics diagnostics) {
    Span elsewhere = null;
    for (Diagnostic one : diagnostics.list()) {
      if (one.code() == code && isIn(allow.scope(), one, true)) {
        elsewhere = one.span();
        break;
      }
    }
    if (elsewhere == null) {
      return false;
    }
    diagnostics
        .say(
            Code.ALLOW_UNUSED,
            allow.span(),
            "this 'allow' does not reach '%s', which stands in another block",
            code.id())
        .note(elsewhere, "it stands here")
        .hint("move the line to the block where the message stands")
        .fix(Fix.removeLines("remove the line", allow.span()));
    return true;
  }

  /** Nobody answers for what has no reason. */
  private static void sayEmpty(Tree.Allow allow, Code code, Diagnostics diagnostics) {
    String question = code.question();
    diagnostics
        .say(
            Code.ALLOW_WITHOUT_REASON,
            allow.reason().span(),
            "'%s' is allowed here without a reason",
            code.id())
        .hint("%s", question == null ? "say why" : "say " + question);
  }

  /** Inside a block, or, where that is of a profile, brought about by a line of it. */
  private static boolean isIn(Span scope, Diagnostic one, boolean ofProfile) {
    if (scope.holds(one.span())) {
      return true;
    }
    for (Diagnostic.Note note : ofProfile ? one.notes() : List.<Diagnostic.Note>of()) {
      if (scope.holds(note.span())) {
        return true;
      }
    }
    return false;
  }

  private static int suppress(
      Tree.Allow allow, boolean ofProfile, Code code, Diagnostics diagnostics) {
    return diagnostics.removeIf(d -> d.code() == code && isIn(allow.scope(), d, ofProfile));
  }

  private static void sayUnknown(Tree.Allow allow, Diagnostics diagnostics) {
    String near = Spelling.nearest(allow.code().text(), Code.ids());
    diagnostics
        .say(Code.ALLOW_UNKNOWN, allow.code().span(), "there is no code '%s'", allow.code().text())
        .meant(near, "write the code that the message has in brackets");
  }

  private static List<Tree.Allow> of(Tree.Declaration declaration) {
    List<Tree.Allow> allows = new ArrayList<>();
    if (declaration instanceof Tree.Device device) {
      allows.addAll(device.allows());
      device.modes().forEach(m -> allows.addAll(0, m.allows()));
    } else if (declaration instanceof Tree.Analyzer analyzer) {
      allows.addAll(analyzer.allows());
    } else if (declaration instanceof Tree.Leads leads) {
      allows.addAll(leads.allows());
    } else if (declaration instanceof Tree.Rule rule) {
      allows.addAll(rule.allows());
    } else if (declaration instanceof SharedPart part) {
      ofParts(part.lines(), allows);
      allows.addAll(part.lines().allows());
    } else if (declaration instanceof Tree.Procedure procedure) {
      ofParts(procedure, allows);
      allows.addAll(procedure.allows());
    }
    return allows;
  }

  /**
   * The inner ones come first, so that an outer one that the inner ones make needless is found out.
   */
  private static void ofParts(Tree.Procedure procedure, List<Tree.Allow> allows) {
    procedure.setups().forEach(s -> allows.addAll(s.allows()));
    procedure.tests().forEach(test -> allows.addAll(test.allows()));
  }
}
