package passband.judge;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.quantity.Rational;

/** What the uncertainties of a sheet will be, before anything is read. */
public final class Expected {
  private Expected() {}

  /**
   * Each reading as if it lay on its upper limit, or its only one, and each derived value of
   * readings that are all at their nominal values; without those of which that is not known. No
   * verdict is given, and no reading scatters.
   */
  public static List<Judgement> of(ItemList list) {
    List<Judgement> expected = new ArrayList<>();
    Map<String, Item.Reading> readings = new HashMap<>();
    BigDecimal coverage = list.decision().coverage();
    for (Item item : list.items()) {
      if (item instanceof Item.Reading reading) {
        readings.put(reading.id(), reading);
        BigDecimal end = end(reading.limits());
        if (end != null) {
          Evaluation known = Evaluation.of(reading, Rational.of(end), coverage);
          expected.add(judgement(reading, end, known, coverage));
        }
      }
    }
    for (Item item : list.items()) {
      if (item instanceof Item.Derived derived) {
        Map<String, DerivedValue.Part> parts = nominal(derived, readings);
        if (!parts.isEmpty()) {
          add(expected, derived, parts, coverage);
        }
      }
    }
    return expected;
  }

  private static void add(
      List<Judgement> expected,
      Item.Derived derived,
      Map<String, DerivedValue.Part> parts,
      BigDecimal coverage) {
    try {
      DerivedValue value = DerivedValue.of(derived, parts, Rational.of(coverage));
      BigDecimal number = new BigDecimal(value.value().doubleValue()).round(new MathContext(6));
      expected.add(
          judgement(derived, number, Evaluation.of(value), coverage).effects(value.effects()));
    } catch (ArithmeticException e) {
      // It has no value there, such as a ratio to zero: nothing is known of it beforehand.
    }
  }

  private static @Nullable BigDecimal end(Item.@Nullable Limits limits) {
    return limits == null ? null : limits.upper() != null ? limits.upper() : limits.lower();
  }

  /** Empty where one of them has none. */
  private static Map<String, DerivedValue.Part> nominal(
      Item.Derived derived, Map<String, Item.Reading> readings) {
    Map<String, DerivedValue.Part> parts = new LinkedHashMap<>();
    for (Map.Entry<String, String> part : derived.calculation().parts().entrySet()) {
      Item.Reading reading = readings.get(part.getValue());
      BigDecimal nominal =
          reading == null || reading.limits() == null ? null : reading.limits().nominal();
      if (reading == null || nominal == null) {
        return Map.of();
      }
      parts.put(part.getKey(), new DerivedValue.Part(reading, Rational.of(nominal)));
    }
    return parts;
  }

  private static Judgement judgement(
      Item item, BigDecimal value, Evaluation known, BigDecimal coverage) {
    return new Judgement(
        item,
        List.of(),
        Verdict.NOT_DONE,
        value,
        List.of(),
        known.expanded(coverage),
        known.factor(coverage),
        known.freedom(),
        Double.NaN,
        List.of());
  }
}
