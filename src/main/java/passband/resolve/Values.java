package passband.resolve;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.diagnostic.Spelling;
import passband.model.Accuracy;
import passband.model.Series;
import passband.quantity.Dimension;
import passband.quantity.Distribution;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.source.Span;
import passband.syntax.AccuracyTerm;
import passband.syntax.Amount;
import passband.syntax.Tree;
import passband.syntax.Word;
import passband.syntax.WrittenError;

/**
 * Takes written amounts for what they are worth. Every method gives null, with the fault said, when
 * it cannot.
 */
public final class Values {
  private final Diagnostics diagnostics;

  /** Faults go to the diagnostics. */
  public Values(Diagnostics diagnostics) {
    this.diagnostics = diagnostics;
  }

  /** The unit of this spelling. */
  public @Nullable Unit unit(Word written) {
    Unit unit = Units.find(written.text());
    if (unit != null) {
      return unit;
    }
    List<String> near = Units.suggest(written.text());
    DiagnosticBuilder said =
        diagnostics.say(Code.UNKNOWN_UNIT, written.span(), "unknown unit '%s'", written.text());
    if (near.size() == 1) {
      said.fixBy(near.get(0));
    } else if (!near.isEmpty()) {
      said.hint("write %s", String.join(" or ", near));
      near.forEach(one -> said.fix(Fix.replace(written.span(), one)));
    }
    return null;
  }

  /** The quantity of this name. */
  public @Nullable QuantityKind quantity(Word written) {
    QuantityKind kind = QuantityKind.find(written.text());
    if (kind == null) {
      diagnostics
          .say(Code.UNKNOWN_QUANTITY, written.span(), "unknown quantity '%s'", written.text())
          .meant(
              Spelling.nearest(written.text(), QuantityKind.names()),
              "the quantities are %s",
              String.join(", ", QuantityKind.names()));
    }
    return kind;
  }

  /** The unit of an amount, {@link Unit#ONE} for a bare number. */
  public @Nullable Unit unitOf(Amount amount) {
    return amount.unit() == null ? Unit.ONE : unit(amount.unit());
  }

  /** The value in SI. */
  public @Nullable Rational si(Amount amount) {
    Unit unit = unitOf(amount);
    return unit == null || amount.number() == null ? null : amount.number().times(unit.factor());
  }

  /**
   * The value in SI, of an amount that must be of the dimension; {@code what} names it in the
   * message.
   */
  public @Nullable Rational si(Amount amount, Dimension wanted, String what) {
    Unit unit = unitOf(amount);
    if (unit == null || amount.number() == null) {
      return null;
    }
    return fits(amount, unit, wanted, what) ? amount.number().times(unit.factor()) : null;
  }

  private boolean fits(Amount amount, Unit unit, Dimension wanted, String what) {
    if (unit.dimension().equals(wanted) && !(wanted.isNone() && isPercent(amount))) {
      return true;
    }
    if (amount.unit() == null) {
      sayUnitMissing(List.of(amount), wanted, null, what);
    } else {
      DiagnosticBuilder said =
          diagnostics.say(
              Code.UNIT_MISMATCH,
              amount.span(),
              "%s is %s, but this is %s",
              what,
              wanted.describe(),
              isPercent(amount) ? "a percentage" : unit.dimension().describe());
      for (Unit other : Units.of(wanted)) {
        if (other.symbol().equalsIgnoreCase(amount.unit().text())) {
          said.hint("write '%s'", other.symbol());
          said.fix(Fix.replace(amount.unit().span(), other.symbol()));
        }
      }
    }
    return false;
  }

  /**
   * Says that amounts next to each other lack their unit; which one is meant only the author knows.
   *
   * @param known the unit where something else says it; null where it may be any of the dimension
   */
  public void sayUnitMissing(
      List<Amount> amounts, Dimension wanted, @Nullable Unit known, String what) {
    Span first = amounts.get(0).span();
    int end = amounts.get(amounts.size() - 1).span().end();
    List<Unit> units = known == null ? Units.of(wanted) : List.of(known);
    List<String> symbols = new ArrayList<>();
    units.forEach(unit -> symbols.add(unit.symbol()));
    DiagnosticBuilder said =
        diagnostics
            .say(
                Code.MISSING_UNIT,
                new Span(first.file(), first.start(), end),
                "%s needs a unit: it is %s",
                what,
                known == null ? wanted.describe() : "recorded in " + known.symbol())
            .hint("write the unit after the number: %s", String.join(", ", symbols));
    for (String symbol : amounts.size() > 2 ? List.<String>of() : symbols) {
      List<Fix.Edit> edits = new ArrayList<>();
      for (Amount amount : amounts) {
        edits.add(new Fix.Edit(amount.span().atEnd(), " " + symbol));
      }
      said.fix(Fix.of("add '" + symbol + "'", edits.toArray(new Fix.Edit[0])));
    }
  }

  /** Whether the amount is a percentage. */
  public static boolean isPercent(Amount amount) {
    return amount.unit() != null && amount.unit().text().equals("%");
  }

  /**
   * The same as {@link #si(Amount, Dimension, String)} for an amount that must be more than zero.
   */
  public @Nullable Rational positive(Amount amount, Dimension wanted, String what) {
    Rational value = si(amount, wanted, what);
    if (value != null && value.signum() <= 0) {
      diagnostics.say(Code.REVERSED_RANGE, amount.span(), "%s must be greater than zero", what);
      return null;
    }
    return value;
  }

  /** A whole number from 1 up. */
  public @Nullable Integer count(Amount amount, String what) {
    Rational value = amount.number();
    if (value == null) {
      return null;
    }
    if (!value.isInteger() || value.signum() <= 0 || value.compareTo(Rational.of(1000)) > 0) {
      diagnostics.say(
          Code.WRONG_KIND, amount.span(), "%s must be a whole number from 1 to 1000", what);
      return null;
    }
    return value.numerator().intValueExact();
  }

  /** A series of values; items with faults are left out, and with none left it is null. */
  public @Nullable Series series(List<Tree.SeriesItem> items, Dimension wanted, String what) {
    List<Series.Segment> segments = new ArrayList<>();
    Unit unit = null;
    for (Tree.SeriesItem item : items) {
      Series.Segment segment = segment(item, wanted, what);
      if (segment != null) {
        follows(segment, segments, item.span());
        segments.add(segment);
        unit = unit == null ? unitOf(item.from()) : unit;
      }
    }
    return segments.isEmpty() || unit == null ? null : new Series(wanted, unit, segments);
  }

  /**
   * Whether the figures, at least two, are all of one other dimension than a quantity: then it is
   * the quantity that is wrong, which is said once, at its name.
   */
  boolean allOfAnother(QuantityKind kind, List<Amount> figures, Word name) {
    Dimension other = null;
    for (Amount figure : figures) {
      Unit unit = figure.unit() == null ? null : Units.find(figure.unit().text());
      boolean same = unit != null && (other == null || other.equals(unit.dimension()));
      if (unit == null || !same || unit.dimension().equals(kind.dimension())) {
        return false;
      }
      other = unit.dimension();
    }
    if (other == null || figures.size() < 2) {
      return false;
    }
    diagnostics.say(
        Code.UNIT_MISMATCH,
        name.span(),
        "'%s' is %s, but each of its figures is %s",
        name.text(),
        kind.dimension().describe(),
        other.describe());
    return true;
  }

  /** Single values are listed upward and each once, so that a slip in one of them shows. */
  private void follows(Series.Segment one, List<Series.Segment> before, Span at) {
    if (before.isEmpty()) {
      return;
    }
    Series.Segment last = before.get(before.size() - 1);
    int order = one.from().compareTo(last.to());
    boolean single = one.from().equals(one.to()) && last.from().equals(last.to());
    if (single && order == 0) {
      diagnostics.say(Code.DUPLICATE_NAME, at, "this value is listed twice");
    } else if (single && order < 0) {
      diagnostics.say(Code.REVERSED_RANGE, at, "this is not above what is listed before it");
    }
  }

  private Series.@Nullable Segment segment(Tree.SeriesItem item, Dimension wanted, String what) {
    Rational from = si(item.from(), wanted, what);
    Rational to = item.to() == null ? from : si(item.to(), wanted, what);
    Rational step = item.step() == null ? null : positive(item.step(), wanted, "a step");
    if (from == null || to == null || (item.step() != null && step == null)) {
      return null;
    }
    if (item.to() != null && from.compareTo(to) >= 0) {
      sayEmpty(item.span(), item.from(), item.to(), from.compareTo(to) > 0, diagnostics);
      return null;
    }
    return new Series.Segment(from, to, step);
  }

  /** Says that a range's upper end is not above its lower one. */
  static void sayEmpty(
      Span range, Amount lower, Amount upper, boolean reversed, Diagnostics diagnostics) {
    DiagnosticBuilder said =
        diagnostics.say(
            Code.REVERSED_RANGE,
            range,
            "empty range: the upper end must be greater than the lower end");
    if (reversed) {
      said.hint("write the lower end first").fix(swapped(lower, upper));
    }
  }

  /** Two amounts in each other's place; a unit that one of them lends the other stays. */
  public static Fix swapped(Amount one, Amount other) {
    return one.hasOwnUnit() == other.hasOwnUnit()
        ? Fix.swap(one.span(), other.span())
        : Fix.swap(one.numberSpan(), other.numberSpan());
  }

  /**
   * An error statement.
   *
   * @param top the top of the range in SI, of which {@code % of range} is taken; null where there
   *     is none
   */
  public @Nullable Accuracy accuracy(
      WrittenError error, Dimension dimension, @Nullable Rational top) {
    Rational relative = Rational.ZERO;
    Rational absolute = Rational.ZERO;
    for (AccuracyTerm term : error.terms()) {
      Rational value =
          Values.isPercent(term.amount())
              ? si(term.amount())
              : si(term.amount(), dimension, "a fixed error");
      if (value == null) {
        return null;
      }
      if (!Values.isPercent(term.amount())) {
        absolute = absolute.plus(value.abs());
      } else if (term.of() == AccuracyTerm.Of.RANGE && top != null) {
        absolute = absolute.plus(value.abs().times(top));
      } else {
        relative = relative.plus(value.abs());
      }
    }
    Distribution distribution = distribution(error);
    return distribution == null || !hasDegrees(error.freedom())
        ? null
        : new Accuracy(
            relative,
            absolute,
            error.freedom() == null ? distribution : distribution.with(error.freedom().number()));
  }

  /** Fewer than one degree of freedom have no interval; a fault is said. */
  private boolean hasDegrees(@Nullable Amount freedom) {
    Rational degrees = freedom == null ? Rational.ONE : freedom.number();
    if (degrees != null && degrees.compareTo(Rational.ONE) >= 0) {
      return true;
    }
    if (freedom != null) {
      diagnostics
          .say(
              Code.IMPOSSIBLE_EXPRESSION, freedom.span(), "there is at least one degree of freedom")
          .hint("leave 'degrees-of-freedom' out where the error is known exactly");
    }
    return false;
  }

  /** How an error is spread; rectangular where nothing is said, null where it cannot be told. */
  private @Nullable Distribution distribution(WrittenError error) {
    Word said = error.distribution();
    if (said == null) {
      return Distribution.RECTANGULAR;
    }
    List<String> known = new ArrayList<>();
    for (Distribution.Shape shape : Distribution.Shape.values()) {
      known.add(shape.word());
      if (shape.word().equals(said.text())) {
        return coverage(shape, said, error.coverage());
      }
    }
    String near = Spelling.nearest(said.text(), known);
    diagnostics
        .say(Code.UNKNOWN_NAME, said.span(), "there is no distribution '%s'", said.text())
        .meant(near, "one of %s", String.join(", ", known));
    return null;
  }

  /** Half a width means nothing of a normal distribution without its factor. */
  private @Nullable Distribution coverage(
      Distribution.Shape shape, Word said, @Nullable Amount factor) {
    boolean normal = shape == Distribution.Shape.NORMAL;
    if (normal == (factor == null)) {
      diagnostics
          .say(
              normal ? Code.MISSING_ITEM : Code.IMPOSSIBLE_EXPRESSION,
              factor == null ? said.span() : factor.span(),
              normal
                  ? "a normal distribution needs the coverage factor that its error is stated with"
                  : "only a normal distribution has a coverage factor")
          .hint(
              normal
                  ? "write 'as normal coverage 2' where the certificate says k = 2"
                  : "leave 'coverage' out");
      return null;
    }
    Rational k = factor == null ? Rational.ONE : factor.number();
    if (k == null || k.signum() <= 0) {
      diagnostics.say(Code.IMPOSSIBLE_EXPRESSION, said.span(), "a coverage factor is above zero");
      return null;
    }
    return new Distribution(shape, k);
  }
}
