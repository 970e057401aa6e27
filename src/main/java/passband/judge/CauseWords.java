package passband.judge;

import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

/** The sentence of each cause: the only place where it is made. */
final class CauseWords {
  private CauseWords() {}

  /** All of them, after one another; empty for none. */
  static String of(List<Cause> causes) {
    return causes.stream().map(CauseWords::of).collect(Collectors.joining("; "));
  }

  static String of(Cause cause) {
    String words = words(cause);
    return cause.part() == null
        ? words
        : cause.part() + (cause.code() == Cause.Code.PART_NOT_READ ? ", " : ": ") + words;
  }

  private static String words(Cause c) {
    return switch (c.code()) {
      case BELOW_LIMIT -> "below " + number(c);
      case ABOVE_LIMIT -> "above " + number(c);
      case GUARD_BAND -> "in the guard band of " + number(c);
      case INSIDE_TOLERANCE -> "inside the tolerance, outside the guard band";
      case OTHER_OUTCOME -> "only '" + c.note() + "' passes";
      case EARLIER_ATTEMPT -> "attempt " + number(c) + ", the first was " + c.note();
      case DOES_NOT_APPLY -> "recorded although it does not apply";
      case OTHER_KIND -> "recorded as a " + c.written() + ", but it is a " + c.note();
      case NOT_TICKED -> "'" + c.written() + "' is not 'yes'";
      case NO_OUTCOME -> "'" + c.written() + "' is not one of the outcomes";
      case ATTEMPT_NUMBER, ATTEMPTS_UNNUMBERED, ATTEMPT_TWICE, ATTEMPT_MISSING, DONE_AND_NOT_DONE ->
          attempts(c);
      case DECIMAL_COMMA,
          NOT_A_NUMBER,
          NO_UNIT,
          UNKNOWN_UNIT,
          OTHER_UNIT,
          TOO_FEW_DECIMALS,
          NEGATIVE,
          CREST_BELOW_ONE ->
          value(c);
      case PART_NOT_READ -> "from which it is calculated, has no reading";
      case NOT_CALCULABLE -> "it cannot be calculated: " + c.note();
      case UNCERTAINTY_UNKNOWN -> "the uncertainty of its parts is not known";
      case OTHER_THAN_CALCULATED ->
          "recorded as " + c.written() + ", but calculated as " + number(c);
      case POINTS_ONLY, NO_DIGEST, NO_DATE, CALIBRATION_OVERDUE, CALIBRATION_UNCHECKED ->
          ofTheWhole(c);
    };
  }

  private static String attempts(Cause c) {
    return switch (c.code()) {
      case ATTEMPT_NUMBER -> "'" + c.written() + "' is not an attempt number";
      case ATTEMPTS_UNNUMBERED -> "several values without attempt numbers";
      case ATTEMPT_TWICE -> "attempt " + number(c) + " is recorded twice";
      case ATTEMPT_MISSING -> "an attempt before number " + number(c) + " is missing";
      default -> "both a value and 'not done' are recorded";
    };
  }

  /** Why a written value cannot be compared. */
  private static String value(Cause c) {
    return switch (c.code()) {
      case DECIMAL_COMMA -> "use a decimal point, not a comma";
      case NOT_A_NUMBER -> "'" + c.written() + "' is not a number";
      case NO_UNIT -> "no unit is given";
      case UNKNOWN_UNIT -> "the limits are in '" + c.note() + "', which is not a known unit";
      case OTHER_UNIT -> "given in " + c.written() + ", but the limits are in " + c.note();
      case TOO_FEW_DECIMALS ->
          "recorded with too few decimals: the limits need "
              + number(c)
              + (c.note() == null ? "" : " in " + c.note());
      case CREST_BELOW_ONE ->
          "below 1, which is impossible for a crest factor (check both readings)";
      default ->
          "negative, which is impossible for this quantity (zero the instrument, or check the"
              + " sign)";
    };
  }

  private static String ofTheWhole(Cause c) {
    return switch (c.code()) {
      case POINTS_ONLY ->
          "limits.json format 1 has no ticks, choices, records or seal; they cannot be judged, so"
              + " the result is never 'pass'";
      case NO_DIGEST ->
          "the readings file has no digest: nothing says that it belongs to these limits, and it"
              + " cannot pass";
      case NO_DATE -> "the readings have no date, so calibration due dates were not checked";
      case CALIBRATION_UNCHECKED ->
          "calibration not checked: "
              + name(c)
              + " is '"
              + c.written()
              + "', which has no date such as 2026-01-31";
      default -> "calibration overdue: " + name(c) + " is " + c.written() + ", used on " + c.note();
    };
  }

  /** The record's name at the end of its identity. */
  private static String name(Cause c) {
    String id = Objects.requireNonNull(c.item());
    return id.substring(id.lastIndexOf('/') + 1);
  }

  private static String number(Cause c) {
    BigDecimal number = Objects.requireNonNull(c.number());
    return number.toPlainString();
  }
}
