package passband.judge;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * Why an item has its verdict, or what else a reader of the verdicts has to know: made where the
 * judge decides; its sentence is {@link CauseWords}'s.
 *
 * @param item the identity of the item; null where it concerns the whole record
 * @param part the quantity from which a derived value is calculated and which the cause is of; null
 *     where it is of the item itself
 * @param number the limit, value, attempt or number of decimals concerned; null for none
 * @param unit of the number, a UCUM code; null where it has none
 * @param written what was written down and is at fault; null for none
 * @param note what that is held against, or what else is to be said: the outcome that passes, the
 *     kind asked for, the unit of the limits; null for none
 * @param place where it was written; null where it was not, or where that is not known
 */
public record Cause(
    Code code,
    @Nullable String item,
    @Nullable String part,
    @Nullable BigDecimal number,
    @Nullable String unit,
    @Nullable String written,
    @Nullable String note,
    @Nullable Place place) {

  /** In words that never change. */
  public enum Code {
    BELOW_LIMIT,
    ABOVE_LIMIT,
    GUARD_BAND,
    INSIDE_TOLERANCE,
    OTHER_OUTCOME,
    EARLIER_ATTEMPT,
    DOES_NOT_APPLY,
    OTHER_KIND,
    NOT_TICKED,
    NO_OUTCOME,
    ATTEMPT_NUMBER,
    ATTEMPTS_UNNUMBERED,
    ATTEMPT_TWICE,
    ATTEMPT_MISSING,
    DONE_AND_NOT_DONE,
    DECIMAL_COMMA,
    NOT_A_NUMBER,
    NO_UNIT,
    UNKNOWN_UNIT,
    OTHER_UNIT,
    TOO_FEW_DECIMALS,
    NEGATIVE,
    CREST_BELOW_ONE,
    PART_NOT_READ,
    NOT_CALCULABLE,
    UNCERTAINTY_UNKNOWN,
    OTHER_THAN_CALCULATED,
    POINTS_ONLY,
    NO_DIGEST,
    NO_DATE,
    CALIBRATION_OVERDUE,
    CALIBRATION_UNCHECKED;

    /** As written in JSON, such as {@code below-limit}. */
    public String word() {
      return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
  }

  /**
   * A cell of the table of readings.
   *
   * @param line in the file, from 1
   * @param column its heading, such as {@code unit}
   */
  public record Place(int line, String column) {}

  /** Of an item, or of the whole record where that is null. */
  static Cause of(Code code, @Nullable String item) {
    return new Cause(code, item, null, null, null, null, null, null);
  }

  /** The same with the number concerned and its unit. */
  Cause number(BigDecimal number, @Nullable String unit) {
    return new Cause(code, item, part, number, unit, written, note, place);
  }

  /** The same with what it is held against. */
  Cause note(@Nullable String note) {
    return new Cause(code, item, part, number, unit, written, note, place);
  }

  /** The same with what stands in a cell of a row. */
  Cause at(Readings.Row row, String column) {
    String written =
        switch (column) {
          case "unit" -> row.unit();
          case "attempt" -> row.attempt();
          case "kind" -> row.kind();
          default -> row.reading();
        };
    return new Cause(code, item, part, number, unit, written, note, new Place(row.line(), column));
  }

  /** The same with what was written, where it is part of a cell or a calculation's. */
  Cause written(String written) {
    return new Cause(code, item, part, number, unit, written, note, place);
  }

  /** The same as the cause of a value that is calculated from this one. */
  Cause ofPart(String derived, String quantity) {
    return new Cause(code, derived, quantity, number, unit, written, note, place);
  }

  /** As a sentence for people. */
  public String text() {
    return CauseWords.of(this);
  }
}
