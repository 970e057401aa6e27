package passband.compile;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.limit.Decision;
import passband.limit.LimitAlone;
import passband.limit.NamedValues;
import passband.quantity.QuantityKind;
import passband.resolve.Included;
import passband.resolve.Profiles;
import passband.resolve.Scope;
import passband.resolve.Values;
import passband.source.Span;
import passband.syntax.Amount;
import passband.syntax.Amounts;
import passband.syntax.Conditions;
import passband.syntax.Derive;
import passband.syntax.Tree;

/**
 * Looks at the lines of a part that no procedure includes, and of a rule that no test uses, by
 * planning them for a bench of which nothing is known. Only what is wrong on every bench is said:
 * units, quantities, dimensions, the form of cells and placeholders, what a test lacks.
 */
final class Alone {
  /** What is wrong whatever is on the bench. */
  private static final Set<Code> ANYWHERE =
      EnumSet.of(
          Code.UNKNOWN_UNIT,
          Code.UNKNOWN_QUANTITY,
          Code.UNKNOWN_LANGUAGE,
          Code.UNKNOWN_COLUMN,
          Code.UNKNOWN_PLACEHOLDER,
          Code.UNIT_MISMATCH,
          Code.MISSING_UNIT,
          Code.MISSING_ITEM,
          Code.MISSING_COLUMN,
          Code.REPEATED_ITEM,
          Code.REVERSED_RANGE,
          Code.EMPTY_LIMITS,
          Code.EMPTY_TABLE,
          Code.CELL_COUNT,
          Code.BAD_CELL,
          Code.BLANK_CELL,
          Code.TOO_MANY_POINTS,
          Code.DUPLICATE_NAME,
          Code.WRONG_KIND,
          Code.IMPOSSIBLE_EXPRESSION,
          Code.SYNTAX,
          Code.CSV_SYNTAX,
          Code.FILE_NOT_FOUND);

  private final Scope scope;
  private final Planner.TableFiles tables;
  private final Diagnostics found;

  /** Formulas over readings, which only a bench has. */
  private final List<Span> formulas = new ArrayList<>();

  /**
   * @param scope what the lines see; what they do not find there is not said
   * @param found takes what is said, of what only a bench tells too until {@link #settle}
   */
  Alone(Scope scope, Planner.TableFiles tables, Diagnostics found) {
    this.scope = scope;
    this.tables = tables;
    this.found = found;
  }

  /** The lines of a part. */
  void part(Tree.Procedure written) {
    Tree.Procedure lines = RuleDerives.in(written, scope);
    head(lines);
    Recorded recorded = new Recorded(found);
    recorded.declare(lines);
    Steps steps =
        new Steps(UnknownBench.DEVICE, UnknownBench.INSTRUMENTS, recorded, scope.names(), found);
    steps.of(lines.steps(), TextPlace.OUTSIDE);
    Setups setups =
        new Setups(
            List.of(),
            UnknownBench.DEVICE,
            UnknownBench.INSTRUMENTS,
            List.of(),
            scope.names(),
            new Diagnostics());
    for (Tree.Test test : lines.tests()) {
      new TestPlanner(
              test,
              UnknownBench.DEVICE,
              UnknownBench.INSTRUMENTS,
              Decision.SIMPLE,
              setups,
              steps,
              scope,
              found)
          .resolve(tables);
      mayDeliver(test);
      derives(test.derives());
      limits(test);
    }
    found.sharing(List.of(), lines.name().span());
    settle();
  }

  /** Whether output is on, and so for how long, only the bench's modes tell. */
  private void mayDeliver(Tree.Test test) {
    Amount onTime = test.onTime();
    if (onTime != null) {
      found.removeIf(one -> one.code() == Code.WRONG_KIND && one.span().equals(onTime.span()));
    }
  }

  private void head(Tree.Procedure lines) {
    Profiles none = new Profiles(scope.names(), new Diagnostics());
    Included whole = new Included(lines, List.of(), true);
    new Planner(whole, scope, none, Retarget.of(null), name -> null, tables, found).head();
  }

  /** A rule. */
  void rule(Tree.Rule rule) {
    Tree.Test test = test(rule, Accepts.lines(rule, found));
    new Accepts(UnknownBench.DEVICE, UnknownBench.INSTRUMENTS, scope, found)
        .of(test, new NamedValues(scope.names()));
    derives(rule.derives());
    limits(test);
    settle();
  }

  private static Tree.Test test(Tree.Rule rule, List<Tree.Accept> lines) {
    Conditions none = new Conditions(List.of(), null, null, null, null, null, null);
    return new Tree.Test(
        rule.name(),
        null,
        null,
        none,
        null,
        rule.derives(),
        lines,
        null,
        List.of(),
        List.of(),
        rule.span());
  }

  private void derives(List<Derive> derives) {
    Values values = new Values(found);
    for (Derive derive : derives) {
      formulas.add(derive.value().span());
      Amounts.of(derive.value()).forEach(values::unitOf);
      values.unitOf(derive.resolution());
    }
  }

  private void limits(Tree.Test test) {
    Map<String, ?> workedOut = Accepts.workedOut(test);
    for (Tree.Accept line : test.accepts()) {
      QuantityKind kind =
          line.quantity() == null || workedOut.containsKey(line.quantity().text())
              ? null
              : QuantityKind.find(line.quantity().text());
      if (kind != null && line.limit() != null) {
        LimitAlone.check(line.limit(), kind, found);
      }
    }
  }

  private void settle() {
    found.removeIf(one -> !ANYWHERE.contains(one.code()) || dependsOnBench(one));
  }

  private boolean dependsOnBench(Diagnostic one) {
    if (one.code() == Code.UNKNOWN_PLACEHOLDER) {
      return isName(one.span().text());
    }
    for (Span formula : formulas) {
      if (one.code() != Code.UNKNOWN_UNIT && formula.holds(one.span())) {
        return true;
      }
    }
    return false;
  }

  /** Whether a placeholder may stand for something. */
  private static boolean isName(String written) {
    boolean closed = written.length() > 2 && written.endsWith("}");
    for (int i = 1; closed && i < written.length() - 1; i++) {
      char c = written.charAt(i);
      closed = Character.isLetterOrDigit(c) || c == '-' || c == '.' || c == '_';
    }
    return closed;
  }
}
