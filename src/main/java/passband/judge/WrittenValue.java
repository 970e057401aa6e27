package passband.judge;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import passband.evidence.Item;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;
import passband.quantity.Units;

/**
 * A written value in an item's unit: {@code 0.2000 A} of an item in mA is 200.0.
 *
 * @param value exact; null where there is trouble
 * @param trouble why it cannot be compared; null where it can
 */
record WrittenValue(@Nullable Rational value, @Nullable String trouble) {
  private static final Pattern NUMBER = Pattern.compile("[+\\-\u2212]?\\d{1,40}(\\.\\d{1,40})?");

  /** Of a reading. */
  static WrittenValue of(Item.Scale scale, Readings.Row row) {
    String written = row.reading().replace('\u2212', '-');
    if (!NUMBER.matcher(row.reading()).matches()) {
      return trouble(
          written.contains(",")
              ? "use a decimal point, not a comma"
              : "'" + row.reading() + "' is not a number");
    }
    if (row.unit().isEmpty() && !scale.unit().equals("1")) {
      return trouble("no unit is given");
    }
    Unit own = unit(scale.unit());
    Unit given = row.unit().isEmpty() ? Unit.ONE : unit(row.unit());
    if (own == null) {
      return trouble("the limits are in '" + scale.unit() + "', which is not a known unit");
    }
    if (given == null || !given.dimension().equals(own.dimension())) {
      return trouble("given in " + row.unit() + ", but the limits are in " + own.printed());
    }
    Rational ratio = given.factor().over(own.factor());
    BigDecimal number = new BigDecimal(written);
    Rational value = Rational.of(number).times(ratio);
    if (ratio.over(Rational.TEN.pow(number.scale())).compareTo(resolution(scale)) > 0) {
      return trouble("recorded with too few decimals: " + needed(scale, own));
    }
    if (value.signum() < 0 && !scale.negative()) {
      return trouble(
          "negative, which is impossible for this quantity (zero the instrument, or check the sign)");
    }
    return new WrittenValue(value, null);
  }

  /**
   * A value as written, put into an item's unit with every digit kept: {@code 0.2000 A} in mA is
   * {@code 200.0}; with its own unit, in quotes, where it cannot be.
   *
   * @param unit by its UCUM code; null for none
   */
  static String inUnit(@Nullable String unit, Readings.Row row) {
    Unit own = unit(unit);
    Unit given = unit(row.unit());
    if (row.unit().isEmpty() || own != null && own.equals(given)) {
      return row.reading();
    }
    boolean converts =
        own != null
            && given != null
            && given.dimension().equals(own.dimension())
            && NUMBER.matcher(row.reading()).matches();
    return converts
        ? converted(new BigDecimal(row.reading().replace('\u2212', '-')), given, own)
        : "'" + row.reading() + " " + row.unit() + "'";
  }

  private static String converted(BigDecimal number, Unit given, Unit own) {
    Rational ratio = given.factor().over(own.factor());
    int decimals = number.scale();
    for (Rational rest = ratio; rest.compareTo(Rational.TEN) >= 0; rest = rest.over(Rational.TEN)) {
      decimals--;
    }
    for (Rational rest = ratio; rest.compareTo(Rational.ONE) < 0; rest = rest.times(Rational.TEN)) {
      decimals++;
    }
    return Real.of(Rational.of(number).times(ratio))
        .toDecimal(Math.max(0, decimals), RoundingMode.HALF_EVEN)
        .setScale(Math.max(0, decimals), RoundingMode.HALF_EVEN)
        .toPlainString();
  }

  /** Why it cannot be compared; empty where it can. */
  String why() {
    return trouble == null ? "" : trouble;
  }

  private static String needed(Item.Scale scale, Unit unit) {
    return "the limits need "
        + scale.decimals()
        + (unit.equals(Unit.ONE) ? "" : " in " + unit.printed());
  }

  private static Rational resolution(Item.Scale scale) {
    return Rational.of(scale.resolution());
  }

  private static WrittenValue trouble(String what) {
    return new WrittenValue(null, what);
  }

  /** A unit by its UCUM code or as sources write it; null where it is neither. */
  static @Nullable Unit unit(@Nullable String text) {
    if (text == null || text.isEmpty() || text.equals("1")) {
      return Unit.ONE;
    }
    Unit unit = Units.ofUcum(text);
    return unit == null ? Units.find(text) : unit;
  }
}
