package passband.judge;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import passband.evidence.Item;
import passband.quantity.Rational;
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

  /** Of a row of a reading or derived value, which has to have the decimals of its limits. */
  static WrittenValue of(Item.Measured item, Readings.Row row) {
    Item.Scale scale = item.scale();
    String id = item.id();
    WrittenValue written = converted(id, scale.unit(), row);
    if (written.value == null) {
      return written;
    }
    Cause coarse = tooCoarse(id, scale.unit(), scale.resolution(), scale.decimals(), row);
    if (coarse != null) {
      return trouble(coarse);
    }
    if (written.value.signum() < 0 && !scale.negative()) {
      return trouble(Cause.of(Cause.Code.NEGATIVE, id).at(row, "reading"));
    }
    return impossible(scale, written.value)
        ? trouble(Cause.of(Cause.Code.CREST_BELOW_ONE, id).at(row, "reading"))
        : written;
  }

  /** The cause where the last digit that was written is coarser than the limits; else null. */
  private static @Nullable Cause tooCoarse(
      String id, String ucum, BigDecimal resolution, int decimals, Readings.Row row) {
    Unit own = Objects.requireNonNull(unit(ucum));
    return step(own, row).compareTo(Rational.of(resolution)) <= 0
        ? null
        : Cause.of(Cause.Code.TOO_FEW_DECIMALS, id)
            .at(row, "reading")
            .number(BigDecimal.valueOf(decimals), null)
            .note(own.equals(Unit.ONE) ? null : own.printed());
  }

  /**
   * Of a row of a blank that asks for a number.
   *
   * @param unit of the blank, a UCUM code
   */
  static WrittenValue of(Item.Recorded item, String unit, Readings.Row row) {
    WrittenValue written = converted(item.id(), unit, row);
    Item.Accepts accepts = item.accepts();
    Cause coarse =
        written.value == null || accepts == null
            ? null
            : tooCoarse(item.id(), unit, accepts.step(), accepts.decimals(), row);
    if (coarse != null) {
      return trouble(coarse);
    }
    return written.value != null && written.value.signum() < 0 && !item.negative()
        ? trouble(Cause.of(Cause.Code.NEGATIVE, item.id()).at(row, "reading"))
        : written;
  }

  /** The number in an item's unit, however many decimals it has. */
  private static WrittenValue converted(String id, String ucum, Readings.Row row) {
    if (!NUMBER.matcher(row.reading()).matches()) {
      boolean comma = row.reading().contains(",") || row.reading().endsWith(DecimalMark.UNSURE);
      Cause.Code code = comma ? Cause.Code.DECIMAL_COMMA : Cause.Code.NOT_A_NUMBER;
      return trouble(Cause.of(code, id).at(row, "reading"));
    }
    if (row.unit().isEmpty() && !ucum.equals("1")) {
      return trouble(Cause.of(Cause.Code.NO_UNIT, id).at(row, "unit"));
    }
    Unit own = unit(ucum);
    Unit given = unit(row.unit());
    if (own == null) {
      return trouble(Cause.of(Cause.Code.UNKNOWN_UNIT, id).at(row, "unit").note(ucum));
    }
    if (given == null || !given.dimension().equals(own.dimension())) {
      return trouble(Cause.of(Cause.Code.OTHER_UNIT, id).at(row, "unit").note(own.printed()));
    }
    Rational ratio = given.factor().over(own.factor());
    return new WrittenValue(Rational.of(number(row)).times(ratio), null);
  }

  private static BigDecimal number(Readings.Row row) {
    return new BigDecimal(row.reading().replace('\u2212', '-'));
  }

  /** One step of the last digit of what was written, in the item's unit. */
  private static Rational step(Unit own, Readings.Row row) {
    Unit given = Objects.requireNonNull(unit(row.unit()));
    return given.factor().over(own.factor()).over(Rational.TEN.pow(number(row).scale()));
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
        ? converted(number(row), given.factor().over(own.factor()))
        : asWritten;
  }

  /** With as many digits as were written, or all that there are where those are more. */
  private static String converted(BigDecimal number, Rational ratio) {
    int decimals = number.scale();
    for (Rational rest = ratio; rest.compareTo(Rational.TEN) >= 0; rest = rest.over(Rational.TEN)) {
      decimals--;
    }
    for (Rational rest = ratio; rest.compareTo(Rational.ONE) < 0; rest = rest.times(Rational.TEN)) {
      decimals++;
    }
    Rational value = Rational.of(number).times(ratio);
    String fixed = value.toFixed(Math.max(0, decimals));
    return Rational.parse(fixed).equals(value) ? fixed : value.toPlain();
  }

  /** Whether no instrument can show it as a crest factor: no peak is below its RMS value. */
  private static boolean impossible(Item.Scale scale, Rational value) {
    return scale.quantity().equals("crest-factor") && value.compareTo(Rational.ONE) < 0;
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
