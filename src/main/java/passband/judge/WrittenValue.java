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
record WrittenValue(@Nullable Rational value, @Nullable Cause trouble) {
  private static final Pattern NUMBER = Pattern.compile("[+\\-\u2212]?\\d{1,40}(\\.\\d{1,40})?");

  /** Of a row of an item. */
  static WrittenValue of(Item.Measured item, Readings.Row row) {
    Item.Scale scale = item.scale();
    String id = item.id();
    String written = row.reading().replace('\u2212', '-');
    if (!NUMBER.matcher(row.reading()).matches()) {
      Cause.Code code = written.contains(",") ? Cause.Code.DECIMAL_COMMA : Cause.Code.NOT_A_NUMBER;
      return trouble(Cause.of(code, id).at(row, "reading"));
    }
    if (row.unit().isEmpty() && !scale.unit().equals("1")) {
      return trouble(Cause.of(Cause.Code.NO_UNIT, id).at(row, "unit"));
    }
    Unit own = unit(scale.unit());
    Unit given = row.unit().isEmpty() ? Unit.ONE : unit(row.unit());
    if (own == null) {
      return trouble(Cause.of(Cause.Code.UNKNOWN_UNIT, id).at(row, "unit").note(scale.unit()));
    }
    if (given == null || !given.dimension().equals(own.dimension())) {
      return trouble(Cause.of(Cause.Code.OTHER_UNIT, id).at(row, "unit").note(own.printed()));
    }
    Rational ratio = given.factor().over(own.factor());
    BigDecimal number = new BigDecimal(written);
    Rational value = Rational.of(number).times(ratio);
    if (ratio.over(Rational.TEN.pow(number.scale())).compareTo(resolution(scale)) > 0) {
      return trouble(
          Cause.of(Cause.Code.TOO_FEW_DECIMALS, id)
              .at(row, "reading")
              .number(BigDecimal.valueOf(scale.decimals()), null)
              .note(own.equals(Unit.ONE) ? null : own.printed()));
    }
    if (value.signum() < 0 && !scale.negative()) {
      return trouble(Cause.of(Cause.Code.NEGATIVE, id).at(row, "reading"));
    }
    return impossible(scale, Real.of(value))
        ? trouble(Cause.of(Cause.Code.CREST_BELOW_ONE, id).at(row, "reading"))
        : new WrittenValue(value, null);
  }

  /** A value as written, with its unit unless that is the item's own, however it is spelt. */
  static String asWritten(@Nullable String unit, Readings.Row row) {
    Unit own = unit(unit);
    Unit given = unit(row.unit());
    boolean same =
        own != null
            && given != null
            && own.dimension().equals(given.dimension())
            && own.factor().equals(given.factor());
    return row.unit().isEmpty() || unit != null && same
        ? row.reading()
        : row.reading() + " " + row.unit();
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
    String asWritten = "'" + row.reading() + " " + row.unit() + "'";
    if (own == null || given == null || !given.dimension().equals(own.dimension())) {
      return asWritten;
    }
    return NUMBER.matcher(row.reading()).matches()
        ? converted(new BigDecimal(row.reading().replace('\u2212', '-')), given, own)
        : asWritten;
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

  /** Whether no instrument can show it: no peak is below its RMS value. */
  static boolean impossible(Item.Scale scale, Real value) {
    return scale.quantity().equals("crest-factor") && value.compareTo(Real.of(Rational.ONE)) < 0;
  }

  private static Rational resolution(Item.Scale scale) {
    return Rational.of(scale.resolution());
  }

  private static WrittenValue trouble(Cause what) {
    return new WrittenValue(null, what);
  }

  /** The unit that a file names, a number's where it names none; null where it is unknown. */
  static @Nullable Unit unit(@Nullable String text) {
    if (text == null || text.isEmpty() || text.equals("1")) {
      return Unit.ONE;
    }
    return Units.recorded(text);
  }
}
