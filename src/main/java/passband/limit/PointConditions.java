package passband.limit;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.model.Analyzer.LoadBank;
import passband.model.Device;
import passband.quantity.Rational;
import passband.source.Span;

/**
 * Under what conditions a point is measured.
 *
 * @param id its identity without the quantity
 * @param ohms the load; null when it has none
 * @param bank the analyzer's load that is set to it; null when none has the value
 * @param columns what names in expressions stand for
 * @param mode null when there is none
 * @param stated the limits that the manual prints, each for a quantity of its own
 * @param span where the point is written
 */
public record PointConditions(
    String id,
    @Nullable Rational ohms,
    @Nullable LoadBank bank,
    RowValues columns,
    Device.@Nullable Mode mode,
    List<Stated> stated,
    Span span) {}
