package passband.judge;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import passband.evidence.ItemNames;
import passband.words.Language;

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

  /**
   * In words that never change, each with the pattern of its sentence, which {@link CauseWords}
   * fills: {@code {number}}, {@code {written}}, {@code {note}} and {@code {part}} are those of the
   * cause, {@code {name}} is the last part of its item's identity. What stands in brackets is left
   * out where the cause has nothing for it.
   */
  public enum Code {
    BELOW_LIMIT("below {number}"),
    ABOVE_LIMIT("above {number}"),
    GUARD_BAND("in the guard band of {number}"),
    INSIDE_TOLERANCE("inside the tolerance, outside the guard band"),
    OTHER_OUTCOME("only '{note}' passes"),
    EARLIER_ATTEMPT("attempt {number}, the first was {note}"),
    DOES_NOT_APPLY("recorded although it does not apply"),
    OTHER_KIND("recorded as a {written}, but it is a {note}"),
    NOT_TICKED("'{written}' is not 'yes'"),
    NO_OUTCOME("'{written}' is not one of the outcomes"),
    ATTEMPT_NUMBER("'{written}' is not an attempt number"),
    ATTEMPTS_UNNUMBERED("several values without attempt numbers"),
    ATTEMPT_TWICE("attempt {number} is recorded twice"),
    ATTEMPT_MISSING("an attempt before number {number} is missing"),
    DONE_AND_NOT_DONE("both a value and 'not done' are recorded"),
    DECIMAL_COMMA(
        "write a decimal point: the comma or point in '{written}' may separate thousands"),
    NOT_A_NUMBER("'{written}' is not a number"),
    NO_UNIT("no unit is given"),
    UNKNOWN_UNIT("the limits are in '{note}', which is not a known unit"),
    OTHER_UNIT("given in {written}, which cannot be converted to {note}"),
    TOO_FEW_DECIMALS("recorded with too few decimals: {number} needed[ in {note}]"),
    NEGATIVE(
        "negative, which is impossible for this quantity (zero the instrument, or check the sign)"),
    CREST_BELOW_ONE("below 1, which is impossible for a crest factor"),
    PEAK_BELOW_RMS("{note}, which is impossible for one wave (check both readings)"),
    PART_NOT_READ("{part}, from which it is calculated, has no reading"),
    ATTEMPTS_DIFFER(
        "calculated from readings of different attempts: {note} (read all of them again)"),
    NOT_CALCULABLE("it cannot be calculated: {note}"),
    UNCERTAINTY_UNKNOWN("the uncertainty of its parts is not known"),
    OTHER_THAN_CALCULATED("recorded as {written}, but calculated as {number}"),
    POINTS_ONLY(
        "limits.json format 1 has no ticks, choices, records or seal; they cannot be judged, so the"
            + " result is never 'pass'"),
    NOT_RELEASED(
        "the limits are of a procedure that was not released when they were written: nobody had"
            + " approved them"),
    NO_DIGEST(
        "the readings file has no digest: nothing says that it belongs to these limits, and it"
            + " cannot pass"),
    NOT_A_DATE("'{written}' is not a date such as 2026-01-31"),
    BEFORE_REVISION(
        "{written} is before the day of the procedure's revision, {note}: is the year right?"),
    FILLER("'{written}' does not say which one it was, or who"),
    EARLIER_FAILED("{note} failed"),
    EARLIER_OPEN("{note} is not done, or unclear"),
    GATE_FAILED("taken although the gate {note} had failed"),
    GATE_OPEN("taken although the gate {note} was not passed"),
    RESULT_CONTRADICTED("the sheet says '{written}', but what is written on it comes to '{note}'"),
    NO_DATE("the readings have no date, so calibration due dates were not checked"),
    CALIBRATION_OVERDUE("calibration overdue: {name} is {written}, used on {note}"),
    INSTRUMENT_OVERDUE("read when its instrument's calibration was overdue ({note} is {written})"),
    CALIBRATION_RUN_OUT(
        "calibration has run out since the readings: {name} is {written}, judged on {note}"),
    CALIBRATION_UNCHECKED(
        "calibration not checked: {name} is '{written}', where one date such as 2026-01-31 is"
            + " needed");

    private final String pattern;

    Code(String pattern) {
      this.pattern = pattern;
    }

    /** The pattern of its sentence. */
    public String pattern() {
      return pattern;
    }

    /** The one that is written so in JSON; null where there is none. */
    public static @Nullable Code find(String word) {
      for (Code code : values()) {
        if (code.word().equals(word)) {
          return code;
        }
      }
      return null;
    }

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

  /** As a sentence, with the identities of items. */
  public String text() {
    return CauseWords.of(this);
  }

  /** As a sentence for people in a language, with the names of items. */
  public String text(ItemNames names, Language language) {
    return CauseWords.of(this, names, language);
  }
}
