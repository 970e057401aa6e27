package passband.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.source.Span;
import passband.syntax.Ratings;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * An instrument: what it takes a load, measures and is set by.
 *
 * @param role what it is on this bench: its jacks go by it, {@code rf.load-high}
 * @param timing how long its readings take
 */
public record Analyzer(
    String role,
    Word name,
    String title,
    List<Terminal> terminals,
    List<LoadBank> loads,
    List<Measure> measures,
    Map<String, Word> actions,
    Timing timing,
    List<ExtraSetting> settings,
    Tree.Analyzer tree)
    implements Reader {

  /**
   * How long readings take, in seconds.
   *
   * @param settle how long output stays on until a reading is steady; null when that is unknown, or
   *     nothing is measured
   * @param unknownSettle why it is unknown; null when it is not
   * @param reading how long the display is read and written down while output stays on; null where
   *     nothing says
   */
  public record Timing(
      @Nullable Rational settle,
      Ratings.@Nullable Unknown unknownSettle,
      @Nullable Rational reading) {}

  /** {@link Timing#settle}. */
  public @Nullable Rational settle() {
    return timing.settle();
  }

  /** {@link Timing#unknownSettle}. */
  public Ratings.@Nullable Unknown unknownSettle() {
    return timing.unknownSettle();
  }

  /** {@link Timing#reading}. */
  public @Nullable Rational reading() {
    return timing.reading();
  }

  /** Whether it keeps what it reads, so that output is off when that is written down. */
  public boolean holds() {
    return actions.containsKey("hold");
  }

  /**
   * A load between two jacks.
   *
   * @param name null when it has none
   * @param terminations {@code open} and {@code short}, where it can be set to them
   * @param error null when it is unknown
   * @param power what it takes, the least power first; empty when that is unknown
   * @param unknownError why the error is unknown; null when it is not, likewise {@code
   *     unknownPower}
   * @param joins jacks that have to be joined while output goes through the load
   */
  public record LoadBank(
      @Nullable String name,
      Terminal from,
      Terminal to,
      Series values,
      List<Termination> terminations,
      @Nullable Accuracy error,
      List<PowerRating> power,
      Ratings.@Nullable Unknown unknownError,
      Ratings.@Nullable Unknown unknownPower,
      List<Join> joins,
      Span span) {
    /** Of its declaration: all that it holds need not be looked through. */
    @Override
    public int hashCode() {
      return span.hashCode();
    }

    private LoadBank among(List<Terminal> jacks) {
      List<Join> moved = new ArrayList<>();
      for (Join join : joins) {
        moved.add(new Join(jack(join.one(), jacks), jack(join.other(), jacks), join.span()));
      }
      return new LoadBank(
          name,
          jack(from, jacks),
          jack(to, jacks),
          values,
          terminations,
          error,
          power,
          unknownError,
          unknownPower,
          moved,
          span);
    }
  }

  /**
   * A power in watts that the load takes for a time in seconds; the time is null for continuous.
   */
  public record PowerRating(Rational power, @Nullable Rational time) {}

  /**
   * A quantity that is measured; between two jacks, or where they are null in the load's circuit.
   *
   * @param through the resistance of the meter's own path, in ohm; null where nothing is said of it
   */
  public record Measure(
      QuantityKind quantity,
      @Nullable Terminal from,
      @Nullable Terminal to,
      @Nullable Rational through,
      List<Range> ranges,
      Span span) {
    /** The range that reaches highest. */
    public Range widest() {
      Range widest = ranges.get(0);
      for (Range range : ranges) {
        widest = range.to().compareTo(widest.to()) > 0 ? range : widest;
      }
      return widest;
    }

    private Measure among(List<Terminal> jacks) {
      return from == null || to == null
          ? this
          : new Measure(quantity, jack(from, jacks), jack(to, jacks), through, ranges, span);
    }
  }

  /**
   * A range of a measured quantity, in SI.
   *
   * @param unit the unit of the resolution: readings are in it
   * @param step the resolution in that unit
   * @param error null when it is unknown
   * @param unknown why it is; null when it is known
   */
  public record Range(
      Rational from,
      Rational to,
      Rational resolution,
      Unit unit,
      Rational step,
      @Nullable Accuracy error,
      Ratings.@Nullable Unknown unknown,
      Span span) {}

  /** The same instrument in another role: its terminals, and what lies between them, go by it. */
  public Analyzer in(String other) {
    List<Terminal> jacks = new ArrayList<>();
    terminals.forEach(jack -> jacks.add(jack.on(other)));
    List<LoadBank> banks = new ArrayList<>();
    loads.forEach(load -> banks.add(load.among(jacks)));
    List<Measure> functions = new ArrayList<>();
    measures.forEach(measure -> functions.add(measure.among(jacks)));
    return new Analyzer(
        other,
        name,
        title,
        List.copyOf(jacks),
        List.copyOf(banks),
        List.copyOf(functions),
        actions,
        timing,
        settings,
        tree);
  }

  private static Terminal jack(Terminal same, List<Terminal> jacks) {
    Terminal found = Named.find(jacks, same.name().text());
    return found == null ? same : found;
  }

  /** The terminal of this name, or null. */
  public @Nullable Terminal terminal(String wanted) {
    return Named.find(terminals, wanted);
  }

  /** The load that can be set to the value, or null. */
  public @Nullable LoadBank load(Rational ohms) {
    for (LoadBank load : loads) {
      if (load.values().contains(ohms)) {
        return load;
      }
    }
    return null;
  }
}
