package passband.diagnostic;

import static passband.diagnostic.Severity.ERROR;
import static passband.diagnostic.Severity.WARNING;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The kinds of thing that the compiler finds. Codes are public: a code's word never changes its
 * meaning and is never used again.
 */
public enum Code {
  /** A line that cannot be read. */
  SYNTAX(ERROR, "a line that cannot be read"),
  /** A line that starts with a word its block does not know. */
  UNKNOWN_WORD(ERROR, "a line that starts with a word its block does not know"),
  /** A block without its opening brace. */
  MISSING_BRACE(ERROR, "a block without its opening brace"),
  /** A brace that belongs to no block. */
  STRAY_BRACE(ERROR, "a brace that belongs to no block"),
  /** A block without its closing brace. */
  UNCLOSED_BLOCK(ERROR, "a block without its closing brace"),
  /** A text without its closing quote. */
  UNTERMINATED_TEXT(ERROR, "a text without its closing quote"),
  /** A backslash before a letter that forms no escape. */
  UNKNOWN_ESCAPE(ERROR, "a backslash before a letter that forms no escape"),
  /** A source that git could not merge. */
  MERGE_CONFLICT(ERROR, "a source that git could not merge"),
  /** A character that the language does not use. */
  UNEXPECTED_CHARACTER(ERROR, "a character that the language does not use"),
  /** A text in a script that the PDF cannot print. */
  SCRIPT_NOT_PRINTABLE(ERROR, "a text in a script that the PDF cannot print"),
  /** A text with characters that the PDF's type does not have. */
  GLYPH_MISSING(WARNING, "a text with characters that the PDF's type does not have"),
  /** A comma between two digits. */
  COMMA_IN_NUMBER(ERROR, "a comma between two digits"),
  /** A number with too many digits or too large an exponent. */
  NUMBER_TOO_LARGE(ERROR, "a number with too many digits or too large an exponent"),
  /** A file that is not UTF-8 text. */
  NOT_UTF_8(ERROR, "a file that is not UTF-8 text"),
  /** An expression nested too deeply. */
  NESTED_TOO_DEEPLY(ERROR, "an expression nested too deeply"),
  /** A file that does not exist or cannot be read. */
  FILE_NOT_FOUND(ERROR, "a file that does not exist or cannot be read"),
  /** Files that use each other in a circle. */
  USE_CYCLE(ERROR, "files that use each other in a circle"),
  INCLUDE_CYCLE(ERROR, "a part that includes itself"),
  /** A use outside the library root. */
  USE_OUTSIDE_ROOT(ERROR, "a use outside the library root"),
  /** A table file that cannot be read. */
  CSV_SYNTAX(ERROR, "a table file that cannot be read"),
  /** A name that nothing declares. */
  UNKNOWN_NAME(ERROR, "a name that nothing declares"),
  /** A name declared twice. */
  DUPLICATE_NAME(ERROR, "a name declared twice"),
  /** A name that nothing uses. */
  UNUSED_NAME(WARNING, "a name that nothing uses"),
  /** An item given twice where only one is allowed. */
  REPEATED_ITEM(ERROR, "an item given twice where only one is allowed"),
  /** A required item that is missing. */
  MISSING_ITEM(ERROR, "a required item that is missing"),
  /** Two outlets or terminals with the same printed name. */
  PRINTED_NAME_REPEATED(ERROR, "two things with the same printed name"),
  /** A unit that does not exist or is misspelt. */
  UNKNOWN_UNIT(ERROR, "a unit that does not exist or is misspelt"),
  /** Quantities of different dimensions combined. */
  UNIT_MISMATCH(ERROR, "quantities of different dimensions combined"),
  /** A number without the unit it needs. */
  MISSING_UNIT(ERROR, "a number without the unit it needs"),
  /** An unknown quantity. */
  UNKNOWN_QUANTITY(ERROR, "an unknown quantity"),
  /** A language that sheets are not printed in. */
  UNKNOWN_LANGUAGE(ERROR, "a language that sheets are not printed in"),
  /** An item of the wrong kind. */
  WRONG_KIND(ERROR, "an item of the wrong kind"),
  /** An unknown placeholder. */
  UNKNOWN_PLACEHOLDER(ERROR, "an unknown placeholder"),
  /** A choice or a record that is used before it is asked for. */
  ASKED_LATER(ERROR, "a choice or a record that is used before it is asked for"),
  /** A placeholder of a step that is answered several times. */
  AMBIGUOUS_PLACEHOLDER(ERROR, "a placeholder of a step that is answered several times"),
  /** An unknown column. */
  UNKNOWN_COLUMN(ERROR, "an unknown column"),
  /** A column that the test needs and the table lacks. */
  MISSING_COLUMN(ERROR, "a column that the test needs and the table lacks"),
  /** A row with more or fewer cells than the heading. */
  CELL_COUNT(ERROR, "a row with more or fewer cells than the heading"),
  /** A blank cell where a value is needed. */
  BLANK_CELL(ERROR, "a blank cell where a value is needed"),
  /** A cell that does not fit its column. */
  BAD_CELL(ERROR, "a cell that does not fit its column"),
  /** A table without rows. */
  EMPTY_TABLE(ERROR, "a table without rows", "what is tested in its place, or why nothing is"),
  /** A table that expands into too many points. */
  TOO_MANY_POINTS(ERROR, "a table that expands into too many points"),
  /** The same point twice in one test. */
  DUPLICATE_POINT(ERROR, "the same point twice in one test"),
  /** A range whose ends are the wrong way round. */
  REVERSED_RANGE(ERROR, "a range whose ends are the wrong way round"),
  /** Limits that no reading, or every reading, meets. */
  EMPTY_LIMITS(ERROR, "limits that no reading, or every reading, meets"),
  /** Limits that only one reading meets. */
  ONE_POINT_LIMITS(WARNING, "limits that only one reading meets"),
  /** A nominal value outside its own limits. */
  NOMINAL_OUTSIDE_LIMITS(ERROR, "a nominal value outside its own limits"),
  /** An expression that has no value at a point. */
  IMPOSSIBLE_EXPRESSION(ERROR, "an expression that has no value at a point"),
  /** A stated limit looser than the rule. */
  STATED_LOOSER(ERROR, "a stated limit looser than the rule"),
  /** A stated limit tighter than the rule. */
  STATED_TIGHTER(WARNING, "a stated limit tighter than the rule"),
  /** A stated limit rounded the wrong way. */
  STATED_ROUNDED_OUTWARD(WARNING, "a stated limit rounded the wrong way"),
  /** A stated limit that is needed and not given. */
  STATED_MISSING(ERROR, "a stated limit that is needed and not given"),
  /** A stated limit that belongs to no accepted quantity. */
  STATED_UNUSED(ERROR, "a stated limit that belongs to no accepted quantity"),
  /** A lower limit at or below zero. */
  LIMIT_BELOW_ZERO(
      ERROR, "a lower limit at or below zero", "what else finds a generator that delivers nothing"),
  /** A guard band that leaves nothing to accept. */
  NOTHING_ACCEPTED(ERROR, "a guard band that leaves nothing to accept"),
  /** Points that cannot be compared. */
  NOT_COMPARABLE(ERROR, "points that cannot be compared"),
  /** A reading that several instruments could show. */
  READER_AMBIGUOUS(ERROR, "a reading that several instruments could show"),

  /** A name that stands for several things. */
  AMBIGUOUS_NAME(ERROR, "a name that stands for several things"),

  /** A quantity that the analyzer does not measure. */
  NOT_MEASURED(ERROR, "a quantity that the analyzer does not measure"),
  /** A rating that is neither given nor said to be unknown. */
  RATING_MISSING(ERROR, "a rating that is neither given nor said to be unknown"),
  /** A rating said to be unknown without a reason. */
  UNKNOWN_WITHOUT_REASON(ERROR, "a rating said to be unknown without a reason"),
  /** A guard band or a calculation that needs an error which is unknown. */
  UNCERTAINTY_UNKNOWN(ERROR, "a guard band or a calculation that needs an error which is unknown"),
  /** Limits on a reading whose error is unknown. */
  ERROR_UNKNOWN(
      ERROR,
      "limits on a reading whose error is unknown",
      "why a reading of unknown error is good enough"),
  /** A limit outside the analyzer's ranges. */
  OUT_OF_RANGE(ERROR, "a limit outside the analyzer's ranges"),
  /** A conversion without a load. */
  NO_LOAD(ERROR, "a conversion without a load"),
  /** A test rule looser than the mode's tolerance. */
  RULE_LOOSER_THAN_MODE(ERROR, "a test rule looser than the mode's tolerance"),
  /** A test rule looser than the mode's tolerance where another outlet delivers too. */
  LOOSER_TOGETHER(
      ERROR,
      "a test rule looser than the mode's tolerance while another outlet delivers",
      "what the maker says of the output of both at once"),
  /** A test rule tighter than the mode's tolerance. */
  RULE_TIGHTER_THAN_MODE(WARNING, "a test rule tighter than the mode's tolerance"),
  /** A mode tested on an outlet that does not have it. */
  MODE_NOT_ON_OUTLET(ERROR, "a mode tested on an outlet that does not have it"),
  /** A setting outside the mode's range. */
  SETTING_OFF_SPAN(ERROR, "a setting outside the mode's range"),
  /** A setting between the mode's steps. */
  SETTING_OFF_STEP(ERROR, "a setting between the mode's steps"),
  /** A load that the analyzer does not have. */
  LOAD_NOT_AVAILABLE(ERROR, "a load that the analyzer does not have"),
  /** A load that is not between the wired jacks. */
  LOAD_NOT_WIRED(ERROR, "a load that is not between the wired jacks"),
  /** A load that is not one of the mode's rated loads. */
  LOAD_OFF_RATED(
      ERROR,
      "a load that is not one of the mode's rated loads",
      "who gives the tolerance at this load"),
  /** An on-time longer than the mode's duty allows. */
  OVER_DUTY(ERROR, "an on-time longer than the mode's duty allows"),
  /** A power that the load cannot take for the on-time. */
  LOAD_OVERPOWERED(ERROR, "a power that the load cannot take for the on-time"),
  /** A load's power rating that rises with time. */
  LOAD_POWER_RISES(ERROR, "a load's power rating that rises with time"),
  /** An upper limit below one step of the reading. */
  LIMIT_BELOW_STEP(ERROR, "an upper limit below one step of the reading"),
  /** Limits with few resolution steps between them. */
  TOO_COARSE(
      ERROR,
      "limits with few resolution steps between them",
      "why readings in such steps are good enough"),
  /** Rows that let a gain error beyond tolerance and uncertainty pass. */
  GAIN_ERROR_MISSED(WARNING, "rows that miss a gain error beyond tolerance and uncertainty"),
  /** An accuracy ratio below 4 to 1. */
  ACCURACY_RATIO_LOW(
      ERROR,
      "an accuracy ratio below 4 to 1",
      "why this analyzer is good enough, or what makes up for it"),
  /** Limits that fall as the setting rises. */
  LIMITS_FALL(
      ERROR,
      "limits that fall as the setting rises",
      "why the limits fall, and where that is written"),
  /** The same limits at different settings. */
  LIMITS_COPIED(
      ERROR,
      "the same limits at different settings",
      "where the same limits are written for both settings"),
  /** Limits out of line with the rows beside them. */
  LIMITS_OUT_OF_FAMILY(
      ERROR,
      "limits out of line with the rows beside them",
      "where these limits are written, and why they differ"),
  /** The same point with different limits in two tests. */
  LIMITS_DISAGREE(ERROR, "the same point with different limits in two tests"),
  /** A stated limit out of scale with the other rows. */
  PREFIX_SLIP(
      ERROR,
      "a stated limit out of scale with the other rows",
      "where this limit is written, with its unit"),
  /** A power tolerance applied to a current or a voltage. */
  POWER_TOLERANCE_ON_CURRENT(ERROR, "a power tolerance applied to a current or a voltage"),
  /** A peak value compared with an RMS value. */
  PEAK_AGAINST_RMS(ERROR, "a peak value compared with an RMS value", "why the two can be compared"),
  /** A crest factor below 1. */
  CREST_BELOW_ONE(ERROR, "a crest factor below 1"),
  /** A mode whose peak voltage is below that of a sine. */
  PEAK_BELOW_SINE(
      ERROR,
      "a peak voltage below that of a sine of the same power",
      "how the output has so low a peak, and who says so"),
  /** A sweep that does not reach past the limits. */
  SWEEP_TOO_SHORT(ERROR, "a sweep that does not reach past the limits"),
  /** A circuit that is not closed through the load. */
  CIRCUIT_OPEN(ERROR, "a circuit that is not closed through the load"),
  /** A circuit that bypasses the load. */
  CIRCUIT_SHORTED(ERROR, "a circuit that bypasses the load"),
  /** A circuit without the return electrode. */
  RETURN_MISSING(ERROR, "a circuit without the return electrode"),
  /** More leads in a terminal than it holds. */
  TERMINAL_CROWDED(ERROR, "more leads in a terminal than it holds"),
  /** One lead in two places. */
  LEAD_USED_TWICE(ERROR, "one lead in two places"),
  /** A lead rated below the peak voltage. */
  LEAD_UNDERRATED(ERROR, "a lead rated below the peak voltage"),
  /** A lead without a rating in an output circuit. */
  LEAD_UNRATED(
      ERROR,
      "a lead without a rating in an output circuit",
      "how it is known that the insulation is good enough"),
  /** A contact wired to an output. */
  CONTACT_ON_OUTPUT(ERROR, "a contact wired to an output"),
  /** A mode that cannot be activated through the setup. */
  ACTIVATION_OPEN(ERROR, "a mode that cannot be activated through the setup"),
  /** An activation replaced by what turns nothing on, where a limit would not show it. */
  ACTIVATION_EMPTIED(
      ERROR,
      "a test that no longer turns output on, and passes without it",
      "what turns the output on, and how the technician sees that it is on"),
  /** A step replaced by words, where no limit would show that it was not done. */
  STEP_EMPTIED(
      ERROR,
      "a step replaced by words, where a reading passes without it",
      "how the technician sees that the step was done"),
  /** A setup that leaves apart what has to be joined. */
  POLES_NOT_JOINED(ERROR, "a setup that leaves apart what has to be joined"),
  /** A profile that says how all of its steps are done but one. */
  ACTION_MISSING(
      ERROR,
      "a profile that says how all of its steps are done but one",
      "how the step is done without it"),
  /** A leakage that is not measured to earth. */
  LEAKAGE_NOT_TO_EARTH(
      ERROR,
      "a leakage that is not measured to earth",
      "how the leakage comes to earth through the meter"),
  /** A leakage that is read only below the highest setting. */
  LEAKAGE_BELOW_HIGHEST(
      ERROR,
      "a leakage that is not read at the highest setting",
      "who says that the leakage is highest, or has its limit, at this setting"),
  /** A highest peak that is read only below the highest setting. */
  PEAK_BELOW_HIGHEST(
      ERROR,
      "an open-circuit peak that is not read at the highest setting",
      "who says that the peak is highest, or has its limit, at this setting"),
  /** A driven pole that leads connect to earth. */
  POLE_EARTHED(
      ERROR,
      "a driven pole that leads connect to earth",
      "why the pole has to be earthed, and who says so"),
  /** A jack of which nothing says whether it is on earth, where it must not be. */
  EARTH_UNSAID(
      ERROR,
      "a jack that may be on earth, where a driven pole is connected to it",
      "what is known of the jack, and who was asked"),
  /** A pole that no setup connects to anything. */
  POLE_UNWIRED(
      ERROR,
      "a pole of a tested outlet that no setup connects",
      "why nothing has to be connected to the pole"),
  /** Output without a burn caution. */
  CAUTION_MISSING(ERROR, "output without a burn caution"),
  /** A mode that no test covers. */
  MODE_UNTESTED(
      ERROR,
      "a mode that no test covers",
      "what tests the mode instead, or why it may go untested"),
  /** An outlet that no test covers. */
  OUTLET_UNTESTED(
      ERROR,
      "an outlet that no test covers",
      "what tests the outlet instead, or why it may go untested"),
  /** A mode not tested near an end or the middle of its range. */
  SETTING_UNTESTED(
      ERROR,
      "a mode not tested near an end or the middle of its range",
      "why a fault at the settings left out would be found all the same"),
  /** A test that reads an adjusted mode and is not repeated. */
  ADJUSTED_UNTESTED(
      ERROR,
      "a test that reads an adjusted mode and is not repeated",
      "why the adjustment cannot change what this test reads"),
  /** A setup whose drawing does not fit the paper. */
  DRAWING_OFF_PAPER(ERROR, "a setup whose drawing does not fit the paper"),
  /** A state that is entered and not left. */
  STATE_NOT_LEFT(ERROR, "a state that is entered and not left"),
  /** A test that no longer stops the output. */
  STOP_EMPTIED(ERROR, "a test that no longer stops the output"),
  /** A free step while output is on. */
  ACTS_WHILE_ON(
      ERROR,
      "a free step while output is on",
      "why it has to be done with the output on, and why it is safe"),
  /** Free words that name what turns output on. */
  ACTIVATION_IN_WORDS(
      ERROR,
      "free words that name what turns output on",
      "what the words ask for, and that it turns no output on"),
  /** An on-time shorter than the analyzer needs to settle and to be read. */
  ON_TIME_SHORT(ERROR, "an on-time shorter than settling and reading, or the waits"),
  /** A reading for which something is not set. */
  NOT_SET_AT_READING(ERROR, "a reading for which something is not set"),
  /** A setup in which several contacts activate a mode. */
  ACTIVATION_AMBIGUOUS(ERROR, "a setup in which several contacts activate a mode"),
  /** An action that does not name what it sets. */
  PLACEHOLDER_MISSING(ERROR, "an action that does not name what it sets"),
  /** A revision dated before the one it replaces. */
  REVISION_BACKWARDS(ERROR, "a revision dated before the one it replaces"),
  /** A released revision's label with another meaning. */
  RELEASE_NOT_COMPARABLE(WARNING, "a release whose digest is of another version of the meaning"),
  REVISION_REUSED(ERROR, "a released revision's label with another meaning"),
  /** A replaced revision whose digest is not the released one. */
  REPLACED_DIGEST(ERROR, "a replaced revision whose digest is not the released one"),
  /** A replaced revision that is not in the record of releases. */
  REPLACED_UNRECORDED(WARNING, "a replaced revision that is not in the record of releases"),
  /** A revision that does not replace the one released before it. */
  REVISION_GAP(WARNING, "a revision that does not replace the one released before it"),
  /** A release that does not say who approved it. */
  RELEASE_UNAPPROVED(WARNING, "a release that does not say who approved it"),
  /** A procedure that is not released, where only released ones are wanted. */
  NOT_RELEASED(ERROR, "a procedure that is not released, where all must be"),
  /** A released procedure that is not beside its record. */
  RELEASE_MISSING(ERROR, "a released procedure without a source beside its record"),
  /** A record of releases with git's conflict markers. */
  RECORD_CONFLICT(ERROR, "a record of releases that git could not merge"),
  /** A break in the chain of a record of releases. */
  RECORD_GAP(ERROR, "an entry removed or changed in the record of releases"),
  /** Two branches of a record of releases. */
  RECORD_FORK(ERROR, "releases on two branches that nobody approved together"),
  /** An unreadable line in the record of releases. */
  RECORD_SYNTAX(ERROR, "an unreadable line in the record of releases"),
  /** An allow that suppresses nothing. */
  ALLOW_UNUSED(WARNING, "an allow that suppresses nothing"),
  /** An allow of an unknown code. */
  ALLOW_UNKNOWN(ERROR, "an allow of an unknown code"),
  /** An allow of an error. */
  ALLOW_OF_ERROR(ERROR, "an allow of an error that cannot be allowed"),
  /** An allow without a reason. */
  ALLOW_WITHOUT_REASON(ERROR, "an allow without a reason");

  private final Severity severity;
  private final String title;
  private final @Nullable String question;
  private final String id;

  Code(Severity severity, String title) {
    this(severity, title, null);
  }

  /** An error unless it is allowed. */
  Code(Severity severity, String title, @Nullable String question) {
    this.severity = severity;
    this.title = title;
    this.question = question;
    this.id = name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** How much it weighs. */
  public Severity severity() {
    return severity;
  }

  /**
   * Whether an {@code allow} with a reason lets it stand: every warning, and the errors that a
   * person who knows the generator may answer for.
   */
  public boolean allowable() {
    return severity == WARNING || question != null;
  }

  /** Whether it is an error unless it is allowed. */
  public boolean isErrorUnlessAllowed() {
    return question != null;
  }

  /**
   * What the reason of an {@code allow} must say, an indirect question; null for an error that
   * cannot be allowed, and for a warning, of which any reason will do.
   */
  public @Nullable String question() {
    return question;
  }

  /** How much it weighs, in words. */
  public String weight() {
    return question != null ? "error unless allowed" : severity.word();
  }

  /** What it is, in a few words. */
  public String title() {
    return title;
  }

  /** The word in brackets after a message. */
  public String id() {
    return id;
  }

  /** The words of all codes, in their order. */
  public static List<String> ids() {
    return Arrays.stream(values()).map(Code::id).toList();
  }

  /** The code with this word, or null. */
  public static @Nullable Code find(String id) {
    for (Code code : values()) {
      if (code.id.equals(id)) {
        return code;
      }
    }
    return null;
  }
}
