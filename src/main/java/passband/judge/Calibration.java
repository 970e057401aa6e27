package passband.judge;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import passband.evidence.Blank;
import passband.evidence.Item;
import passband.evidence.ItemList;

/** Whether the instruments were in calibration on the day of the readings, as the sheet has it. */
final class Calibration {
  private static final Pattern DATE = Pattern.compile("(?<!\\d)\\d{4}-\\d\\d-\\d\\d(?!\\d)");

  private final Map<String, Attempts> attempts;
  private final Applicability applicability;
  private final Map<Item.Recorded, Readings.Row> dues = new LinkedHashMap<>();
  private final @Nullable LocalDate revised;
  private @Nullable LocalDate day;

  Calibration(ItemList list, Map<String, Attempts> attempts, Applicability applicability) {
    this.attempts = attempts;
    this.applicability = applicability;
    revised = day(list.source().date());
    for (Item item : list.items()) {
      Readings.Row row = item instanceof Item.Recorded ? row(item) : null;
      if (row != null) {
        add((Item.Recorded) item, row);
      }
    }
  }

  private void add(Item.Recorded blank, Readings.Row row) {
    switch (Blank.of(blank)) {
      case DATE -> day = day(row.reading());
      case DUE -> dues.put(blank, row);
      default -> {}
    }
  }

  /** What is judged of a blank; null where there is nothing, or it cannot be told. */
  private Readings.@Nullable Row row(Item item) {
    Attempts written = attempts.getOrDefault(item.id(), Attempts.NONE);
    if (!applicability.applies(item) || written.trouble() != null || written.none()) {
      return null;
    }
    Readings.Row last = written.last();
    return last.kind().isEmpty() || last.kind().equals("record") ? last : null;
  }

  /** The day that a text is; null where it is none. */
  static @Nullable LocalDate day(String text) {
    return DATE.matcher(text).matches() ? parsed(text) : null;
  }

  /** The only day that a text names; null where it names none, or several. */
  private static @Nullable LocalDate only(String text) {
    List<String> found = DATE.matcher(text).results().map(MatchResult::group).toList();
    return found.size() == 1 ? parsed(found.get(0)) : null;
  }

  private static @Nullable LocalDate parsed(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      return null;
    }
  }

  /**
   * Why the blank for the day of the readings is unclear; null where it is not. Nobody can have
   * worked by a revision before its day, and a wrong year would hide that a calibration is overdue.
   */
  @Nullable Cause ofDate(Item.Recorded blank, Readings.Row row) {
    LocalDate day = day(row.reading());
    if (day == null) {
      return Cause.of(Cause.Code.NOT_A_DATE, blank.id()).at(row, "reading");
    }
    return revised == null || !day.isBefore(revised)
        ? null
        : Cause.of(Cause.Code.BEFORE_REVISION, blank.id())
            .at(row, "reading")
            .note(revised.toString());
  }

  /** Why the blank for a due date is unclear; null where it is not. */
  @Nullable Cause ofBlank(Item.Recorded due) {
    Readings.Row row = dues.get(due);
    if (row == null) {
      return null;
    }
    LocalDate until = only(row.reading());
    if (until == null) {
      return Cause.of(Cause.Code.CALIBRATION_UNCHECKED, due.id()).at(row, "reading");
    }
    return day == null || !until.isBefore(day)
        ? null
        : Cause.of(Cause.Code.CALIBRATION_OVERDUE, due.id())
            .at(row, "reading")
            .written(until.toString())
            .note(day.toString());
  }

  /**
   * Why a reading cannot pass; null where it can. Where nothing says whose calibration bears on it,
   * every one on the sheet does.
   */
  @Nullable Cause ofReading(Item.Reading reading) {
    for (Item.Recorded due : dues.keySet()) {
      boolean bears =
          reading.due() == null ? due.sheetName() != null : reading.due().contains(due.id());
      Cause cause = bears ? ofBlank(due) : null;
      if (cause != null && cause.code() == Cause.Code.CALIBRATION_OVERDUE) {
        return Cause.of(Cause.Code.INSTRUMENT_OVERDUE, reading.id())
            .written(String.valueOf(cause.written()))
            .note(due.id().substring(due.id().lastIndexOf('/') + 1));
      }
    }
    return null;
  }

  /**
   * What a reader has to know before everything else.
   *
   * @param today the day of the judgement; null where it is not known
   */
  List<Cause> warnings(@Nullable LocalDate today) {
    List<Cause> warnings = new ArrayList<>();
    dues.forEach(
        (due, row) -> {
          Cause cause = ofBlank(due);
          LocalDate until = only(row.reading());
          if (cause != null) {
            warnings.add(cause);
          } else if (day == null) {
            warnings.add(Cause.of(Cause.Code.NO_DATE, due.id()).at(row, "reading"));
          } else if (today != null && until != null && until.isBefore(today)) {
            warnings.add(
                Cause.of(Cause.Code.CALIBRATION_RUN_OUT, due.id())
                    .at(row, "reading")
                    .written(until.toString())
                    .note(today.toString()));
          }
        });
    return warnings;
  }
}
