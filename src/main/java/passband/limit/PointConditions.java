package passband.limit;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.model.Analyzer.LoadBank;
import passband.model.Device;
import passband.model.Termination;
import passband.quantity.Rational;
import passband.source.Span;
import passband.syntax.Tree;

/**
 * Under what conditions a point is measured.
 *
 * @param id its identity without the quantity
 * @param columns what names in expressions stand for
 * @param mode null when there is none, or its output must not come
 * @param bounds what the outlet and the generator say, each quantity once
 * @param stated the limits that the manual prints, each for a quantity of its own
 * @param span where the point is written
 */
public record PointConditions(
    String id,
    Load load,
    RowValues columns,
    Device.@Nullable Mode mode,
    List<Tree.QuantityLimit> bounds,
    List<Stated> stated,
    Span span) {

  /**
   * What the output goes into.
   *
   * @param ohms null when there is no load
   * @param termination open or short, where there is none
   * @param bank the analyzer's load that is set to it; null when none has the value
   * @param span where it is written
   */
  public record Load(
      @Nullable Rational ohms,
      @Nullable Termination termination,
      @Nullable LoadBank bank,
      Span span) {}

  /** The load; null when it has none. */
  @Nullable Rational ohms() {
    return load.ohms;
  }

  /** The analyzer's load that is set to it; null when none has the value. */
  @Nullable LoadBank bank() {
    return load.bank;
  }
}
