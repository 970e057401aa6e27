package passband.resolve;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Accuracy;
import passband.model.Analyzer.Measure;
import passband.model.Analyzer.Range;
import passband.model.Named;
import passband.model.Terminal;
import passband.quantity.Dimension;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.syntax.AccuracyTerm;
import passband.syntax.Amount;
import passband.syntax.Ratings;
import passband.syntax.Tree;
import passband.syntax.Word;
import passband.syntax.WrittenError;

/** Takes what an instrument, or the generator's own display, measures for what it means. */
final class MeasureProfile {
  /**
   * Currents that flow from a part that is touched or applied, so in at a jack and out at another;
   * earth leakage is measured in the mains cord.
   */
  private static final Set<String> BETWEEN_JACKS =
      Set.of("hf-leakage", "touch-current", "patient-leakage");

  private final List<Terminal> terminals;
  private final Names names;
  private final Diagnostics diagnostics;
  private final Values values;

  /**
   * @param terminals the jacks; none for a display
   */
  MeasureProfile(List<Terminal> terminals, Names names, Diagnostics diagnostics, Values values) {
    this.terminals = terminals;
    this.names = names;
    this.diagnostics = diagnostics;
    this.values = values;
  }

  /** What is measured; what has faults is said and left out. */
  List<Measure> measures(List<Tree.Measure> trees) {
    List<Measure> measures = new ArrayList<>();
    trees.forEach(tree -> add(measures, measure(tree, measures)));
    return List.copyOf(measures);
  }

  private static <T> void add(List<T> list, @Nullable T thing) {
    if (thing != null) {
      list.add(thing);
    }
  }

  /** The jack that a reference names; null, with the fault said, when there is none. */
  @Nullable Terminal terminal(Tree.Ref ref) {
    Word name = ref.parts().get(ref.parts().size() - 1);
    for (Terminal terminal : terminals) {
      if (terminal.name().text().equals(name.text()) && ref.parts().size() <= 2) {
        names.use(name, terminal.name());
        return terminal;
      }
    }
    Scope.unknown(diagnostics, name, "jack", Named.names(terminals));
    return null;
  }

  private void sayWithoutPath(Tree.Measure measure, QuantityKind kind) {
    if (measure.from() == null && !terminals.isEmpty() && BETWEEN_JACKS.contains(kind.name())) {
      diagnostics
          .say(
              Code.MISSING_ITEM,
              measure.quantity().span(),
              "nothing says between which jacks '%s' flows",
              kind.name())
          .hint("write: measure %s from JACK to JACK", kind.name());
    }
  }

  private @Nullable Measure measure(Tree.Measure measure, List<Measure> before) {
    QuantityKind kind = values.quantity(measure.quantity());
    Terminal from = measure.from() == null ? null : terminal(measure.from());
    Terminal to = measure.to() == null ? null : terminal(measure.to());
    if (kind == null) {
      return null;
    }
    sayWithoutPath(measure, kind);
    for (Measure other : before) {
      if (other.quantity().name().equals(kind.name())) {
        diagnostics
            .say(
                Code.DUPLICATE_NAME,
                measure.quantity().span(),
                "'%s' has a 'measure' block already",
                kind.name())
            .note(other.span(), "the first is here")
            .hint("put all of its ranges into one 'measure' block");
      }
    }
    List<Amount> figures = new ArrayList<>();
    measure.ranges().forEach(range -> figures.addAll(List.of(range.from(), range.to())));
    if (values.allOfAnother(kind, figures, measure.quantity())) {
      return null;
    }
    List<Range> ranges = new ArrayList<>();
    measure.ranges().forEach(r -> add(ranges, range(r, kind.dimension())));
    if (measure.ranges().isEmpty()) {
      diagnostics.say(
          Code.MISSING_ITEM,
          measure.span(),
          "a measured quantity needs a 'range', a 'resolution' and an 'error'");
    }
    ranges.sort(
        (one, other) -> {
          int ends = one.to().compareTo(other.to());
          return ends != 0 ? ends : one.from().compareTo(other.from());
        });
    return ranges.isEmpty()
        ? null
        : new Measure(kind, from, to, through(measure, kind), List.copyOf(ranges), measure.span());
  }

  private @Nullable Rational through(Tree.Measure measure, QuantityKind kind) {
    if (measure.through() == null) {
      return null;
    }
    Rational ohms =
        values.positive(measure.through(), Dimension.RESISTANCE, "the meter's own resistance");
    return BETWEEN_JACKS.contains(kind.name())
        ? new Plausible(diagnostics).network(measure.through(), ohms, kind.name())
        : ohms;
  }

  private @Nullable Range range(Tree.Range range, Dimension dimension) {
    Rational from = values.si(range.from(), dimension, "this range");
    Rational to = values.si(range.to(), dimension, "this range");
    if (from != null && to != null && from.compareTo(to) >= 0) {
      boolean reversed = from.compareTo(to) > 0;
      Values.sayEmpty(range.span(), range.from(), range.to(), reversed, diagnostics);
    }
    boolean rated = isRated(range);
    if (range.resolution() == null) {
      diagnostics.say(Code.MISSING_ITEM, range.span(), "this range has no 'resolution' line");
    }
    if (range.resolution() == null || !rated) {
      return null;
    }
    Rational resolution = values.positive(range.resolution(), dimension, "a resolution");
    Accuracy error = range.error() == null ? null : values.accuracy(range.error(), dimension, to);
    boolean faulty = range.error() != null && error == null;
    if (range.error() != null && error != null) {
      believable(range.error(), error);
      if (resolution != null) {
        new Plausible(diagnostics).error(range.error().span(), error.absolute(), resolution);
      }
    }
    if (from == null || to == null || resolution == null || faulty) {
      return null;
    }
    Unit unit = values.unitOf(range.resolution());
    Rational step = range.resolution().number();
    return unit == null || step == null
        ? null
        : new Range(from, to, resolution, unit, step, error, range.unknown(), range.span());
  }

  /** Every meter errs, none by the whole reading, and a percentage is of something. */
  private void believable(WrittenError written, Accuracy error) {
    for (AccuracyTerm term : written.terms()) {
      boolean several = written.terms().size() > 1 && Values.isPercent(term.amount());
      if (several && term.of() == AccuracyTerm.Of.ITSELF) {
        diagnostics
            .say(
                Code.MISSING_ITEM,
                term.span(),
                "a percentage of what: of the reading or the range?")
            .hint("write 'of reading' or 'of range' after it");
      }
    }
    boolean none = error.relative().isZero() && error.absolute().isZero();
    if (none || error.relative().compareTo(Rational.ONE) >= 0) {
      diagnostics.say(
          Code.IMPOSSIBLE_EXPRESSION,
          written.span(),
          none ? "no meter is without an error" : "an error of 100 %% or more of the reading");
    }
  }

  private boolean isRated(Tree.Range range) {
    List<Ratings.Unknown> unknown = range.unknown() == null ? List.of() : List.of(range.unknown());
    return new RequiredRatings("this range", range.span(), unknown, diagnostics)
        .need("error", "error", range.error() != null)
        .areGiven();
  }
}
