package passband.compile;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.limit.Evaluator;
import passband.limit.NamedValues;
import passband.limit.RowValues;
import passband.limit.Value;
import passband.model.Analyzer;
import passband.model.Instruments;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.resolve.Names;
import passband.source.Span;
import passband.syntax.Derive;
import passband.syntax.Word;

/**
 * A point's columns, and some value of each quantity that an instrument measures, to take the
 * dimension of a derived value from.
 */
final class SampleReadings implements RowValues {
  private final RowValues columns;
  private final Instruments instruments;

  SampleReadings(RowValues columns, Instruments instruments) {
    this.columns = columns;
    this.instruments = instruments;
  }

  /**
   * Some value of a comparison of points; null, with the fault said, when it has none.
   *
   * @param readable what can be read at each of the points
   * @param declared the test's own of them, where they are declared
   */
  static @Nullable Value compared(
      Derive derive,
      List<QuantityKind> readable,
      Map<String, Word> declared,
      Names names,
      Diagnostics diagnostics) {
    Map<String, Value> readings = new LinkedHashMap<>();
    for (QuantityKind kind : readable) {
      readings.putIfAbsent(kind.name(), some(readings.size() + 1, kind));
    }
    OverFormula.Readable known = new OverFormula.Readable(readings.keySet(), declared);
    if (!OverFormula.isSound(derive, known, names, diagnostics)) {
      return null;
    }
    NamedValues parts = new NamedValues(names);
    readings.forEach(
        (name, value) -> {
          parts.put(OverFormula.part(name, 0), value);
          Real more = value.real().times(Real.of(Rational.of(9, 7)));
          parts.put(OverFormula.part(name, 1), new Value(more, value.dimension()));
        });
    return new Evaluator(parts, diagnostics).value(OverFormula.writtenOut(derive.value(), 2));
  }

  private static Value some(int at, QuantityKind kind) {
    return Value.of(Rational.of(at * 7L + 1, at + 2L), kind.dimension());
  }

  @Override
  public @Nullable Value value(String name) {
    Value measured = measured(name);
    return measured == null ? columns.value(name) : measured;
  }

  @Override
  public @Nullable Value value(Word written) {
    Value measured = measured(written.text());
    return measured == null ? columns.value(written) : measured;
  }

  private @Nullable Value measured(String name) {
    int at = 0;
    for (Analyzer.Measure measure : instruments.measures()) {
      at++;
      if (measure.quantity().name().equals(name)) {
        return some(at, measure.quantity());
      }
    }
    return null;
  }

  @Override
  public Collection<String> names() {
    List<String> names = new ArrayList<>(columns.names());
    instruments.measures().forEach(m -> names.add(m.quantity().name()));
    return names;
  }

  @Override
  public @Nullable Span row() {
    return columns.row();
  }
}
