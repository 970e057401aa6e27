package passband.compile;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
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
import passband.syntax.Variables;
import passband.syntax.Word;

/**
 * A point's columns, and some value of each quantity that an instrument measures, to take the
 * dimension of a derived value from.
 */
final class SampleReadings implements RowValues {
  /** The columns whose values come with the readings, when a derived value is calculated. */
  private static final Set<String> KNOWN_LATER = Set.of("setting", "load");

  private final RowValues columns;
  private final Instruments instruments;

  /** What the formula has of other columns, as far as it has been evaluated. */
  private final Map<String, Word> lost = new LinkedHashMap<>();

  SampleReadings(RowValues columns, Instruments instruments) {
    this.columns = columns;
    this.instruments = instruments;
  }

  /**
   * Some value of a formula of one point; null, with the fault said, when it has none or takes a
   * column that is not known when the readings are.
   */
  @Nullable Value of(Derive derive, Diagnostics diagnostics) {
    lost.clear();
    Value value = new Evaluator(this, diagnostics).value(derive.value());
    for (Word column : lost.values()) {
      diagnostics
          .say(
              Code.WRONG_KIND,
              column.span(),
              "'%s' is a column, and a derived value is calculated from readings, 'setting' and"
                  + " 'load'",
              column.text())
          .hint("use '%s' in the limit of '%s'", column.text(), derive.name().text());
    }
    if (lost.isEmpty() && value != null && !reads(derive)) {
      diagnostics
          .say(
              Code.WRONG_KIND,
              derive.value().span(),
              "'%s' is calculated from no reading, so what is measured cannot change it",
              derive.name().text())
          .hint("known here: %s", String.join(", ", measures()));
      return null;
    }
    return lost.isEmpty() ? value : null;
  }

  private boolean reads(Derive derive) {
    for (String name : Variables.of(derive.value())) {
      if (measured(name) != null) {
        return true;
      }
    }
    return false;
  }

  private List<String> measures() {
    List<String> names = new ArrayList<>();
    instruments.measures().forEach(m -> names.add(m.quantity().name()));
    return names;
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
    Value column = measured == null ? columns.value(written) : null;
    if (column != null && !KNOWN_LATER.contains(written.text())) {
      lost.putIfAbsent(written.text(), written);
    }
    return measured == null ? column : measured;
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
    names.addAll(measures());
    return names;
  }

  @Override
  public @Nullable Span row() {
    return columns.row();
  }
}
