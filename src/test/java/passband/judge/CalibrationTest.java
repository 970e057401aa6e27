package passband.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import passband.evidence.BadInput;
import passband.evidence.Blank;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.testing.Records;
import passband.testing.Sheets;

/** Nothing passes that was read with an instrument whose calibration was due, or may have been. */
class CalibrationTest {
  private static final String DATE = "sheet/date";
  private static final LocalDate DAY = LocalDate.of(2026, 11, 27);

  private static final List<ItemList> LISTS =
      Stream.concat(Stream.of(Sheets.YARROW, Sheets.TEASEL), Sheets.demo().stream())
          .map(plan -> Evidence.of(plan).list())
          .toList();

  static Stream<ItemList> lists() {
    return LISTS.stream();
  }

  /** Of the first instrument. */
  private static String due(ItemList list) {
    return dues(list).get(0).id();
  }

  private static Records with(ItemList list, String date, String due) {
    return Records.of(list, false)
        .with(DATE, date + ",,,1,record")
        .with(due(list), "\"" + due + "\",,,1,record");
  }

  private static Report judged(ItemList list, Records records, String today) throws BadInput {
    return Judge.judge(list, records.readings(), today);
  }

  private static List<Cause.Code> warnings(Report report) {
    return report.warnings().stream()
        .map(Cause::code)
        .filter(code -> code != Cause.Code.NOT_RELEASED) // the tests' library is not
        // The sheets are filled in with 'pass' as their result, whatever their lines come to.
        .filter(code -> code != Cause.Code.RESULT_CONTRADICTED)
        .toList();
  }

  private static Judgement of(Report report, String id) {
    return report.judgements().stream()
        .filter(j -> j.item().id().equals(id))
        .findFirst()
        .orElseThrow();
  }

  private static List<Item.Recorded> dues(ItemList list) {
    return list.items().stream()
        .filter(i -> i instanceof Item.Recorded && i.id().startsWith("sheet/"))
        .map(i -> (Item.Recorded) i)
        .filter(blank -> Blank.of(blank) == Blank.DUE)
        .toList();
  }

  /** Whether a calibration bears on an item. */
  private static boolean bears(ItemList list, String due, Item item) {
    if (item instanceof Item.Derived derived) {
      return list.items().stream()
          .filter(i -> derived.calculation().parts().containsValue(i.id()))
          .anyMatch(part -> bears(list, due, part));
    }
    return item.id().equals(due) || item instanceof Item.Reading r && r.due().contains(due);
  }

  /** Gates after what is unclear by a calibration, the day itself included, and what they stop. */
  private static Set<String> stopped(ItemList list, String due) {
    Set<String> stopped = new HashSet<>();
    boolean open = false;
    for (Item item : list.items()) {
      open |= bears(list, due, item);
      if (open && item instanceof Item.Tick tick && tick.stops() != null) {
        stopped.add(tick.id());
        stopped.addAll(tick.stops());
      }
    }
    return stopped;
  }

  /** On the day itself it is still calibrated; what other instruments show is not concerned. */
  @ParameterizedTest
  @MethodSource("lists")
  void onlyReadingsUpToTheDueDatePass(ItemList list) throws BadInput {
    for (Item.Recorded due : dues(list)) {
      for (int days : new int[] {-400, -1, 0, 1}) {
        Records records =
            Records.of(list, false)
                .with(DATE, DAY + ",,,1,record")
                .with(due.id(), DAY.plusDays(days) + ",,,1,record");
        Report report = judged(list, records, null);
        assertEquals(days < 0 ? Verdict.INCOMPLETE : Verdict.PASS, report.overall());
        assertEquals(
            days < 0 ? List.of(Cause.Code.CALIBRATION_OVERDUE) : List.of(), warnings(report));
        Set<String> stopped = days < 0 ? stopped(list, due.id()) : Set.of();
        for (Judgement judgement : report.judgements()) {
          boolean unclear = days < 0 && bears(list, due.id(), judgement.item());
          boolean applies = judgement.verdict() != Verdict.NOT_APPLICABLE;
          if (applies && stopped.contains(judgement.item().id())) {
            assertTrue(
                Set.of(Verdict.UNCLEAR, Verdict.NOT_DONE).contains(judgement.verdict()),
                judgement.toString());
          } else if (applies) {
            assertEquals(
                unclear ? Verdict.UNCLEAR : Verdict.PASS,
                judgement.verdict(),
                judgement.toString());
            assertTrue(!unclear || judgement.why().contains("overdue"), judgement.why());
            String name = due.id().substring("sheet/".length());
            assertTrue(
                !unclear
                    || judgement.why().contains("(" + name + " is ")
                    || judgement.item().id().equals(due.id()),
                judgement.why());
          }
        }
      }
    }
  }

  /** Of every reading, and where one instrument does not bear on a reading, another does. */
  @Test
  void whatShowsAReadingBearsOnIt() {
    int apart = 0;
    for (ItemList list : lists().toList()) {
      for (Item item : list.items()) {
        if (item instanceof Item.Reading reading) {
          assertTrue(!reading.due().isEmpty(), item.id());
          apart += reading.due().size() < dues(list).size() ? 1 : 0;
        }
      }
    }
    assertTrue(apart > 0);
  }

  /** A limits file that does not say whose calibration bears on a reading. */
  @ParameterizedTest
  @MethodSource("lists")
  void whereItIsNotKnownEveryCalibrationBears(ItemList list) throws BadInput {
    List<Item> items =
        list.items().stream()
            .map(
                i ->
                    i instanceof Item.Reading r
                        ? new Item.Reading(
                            r.head(), r.where(), r.scale(), r.limits(), r.budget(), null)
                        : i)
            .toList();
    ItemList unknown = new ItemList(list.source(), list.decision(), list.phases(), items);
    for (Item.Recorded due : dues(list)) {
      Records records = Records.of(unknown, false).with(due.id(), "2026-11-26,,,1,record");
      for (Judgement judgement : judged(unknown, records, null).judgements()) {
        assertTrue(
            !(judgement.item() instanceof Item.Measured)
                || judgement.verdict() == Verdict.UNCLEAR
                || judgement.verdict() == Verdict.NOT_APPLICABLE,
            judgement.toString());
      }
    }
  }

  /** What fails does not become better by it. */
  @ParameterizedTest
  @MethodSource("lists")
  void aReadingThatFailsStillFails(ItemList list) throws BadInput {
    int readings = 0;
    for (Item item : list.items()) {
      if (item instanceof Item.Reading reading
          && item.head().applies().isEmpty()
          && reading.limits() != null
          && reading.due().contains(due(list))
          && reading.limits().acceptUpper() != null) {
        BigDecimal high = reading.limits().acceptUpper().add(reading.scale().resolution());
        Records records =
            with(list, "2026-11-27", "2026-11-26")
                .with(item.id(), Records.reading(high.toPlainString(), reading.scale().unit()));
        Report report = judged(list, records, null);
        assertEquals(Verdict.FAIL, of(report, item.id()).verdict());
        assertTrue(of(report, item.id()).why().contains("calibration was overdue"));
        assertEquals(Verdict.FAIL, report.overall());
        readings++;
      }
    }
    assertTrue(readings > 0);
  }

  /** A date that cannot be read, or is not the only one, leaves open whether it was calibrated. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "01.11.2099",
        "2099-13-45",
        "2099-02-29",
        "2099-01-31 or 2098-01-31",
        "S 12",
        "-",
        "?",
        "n/a",
        "12099-01-311"
      })
  void aDueDateThatCannotBeReadDoesNotPass(String due) throws BadInput {
    for (ItemList list : lists().toList()) {
      Report report = judged(list, with(list, "2026-11-27", due), "2026-11-28");
      assertEquals(Verdict.INCOMPLETE, report.overall());
      assertEquals(Verdict.UNCLEAR, of(report, due(list)).verdict());
      assertEquals(List.of(Cause.Code.CALIBRATION_UNCHECKED), warnings(report));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"yesterday", "02.11.2026", "2026-11-31", "2026-11-27 or so", "-"})
  void aDateOfTheReadingsThatCannotBeReadDoesNotPass(String date) throws BadInput {
    for (ItemList list : lists().toList()) {
      Report report = judged(list, with(list, date, "2099-01-31"), "2026-11-28");
      assertEquals(Verdict.INCOMPLETE, report.overall());
      assertEquals(Verdict.UNCLEAR, of(report, DATE).verdict());
      assertTrue(warnings(report).contains(Cause.Code.NO_DATE));
    }
  }

  /** The day of the judgement warns; the readings are as good as on their own day. */
  @ParameterizedTest
  @CsvSource({
    "2026-11-26, 2026-11-29, CALIBRATION_OVERDUE",
    "2026-11-28, 2026-11-29, CALIBRATION_RUN_OUT",
    "2026-11-29, 2026-11-29, ",
    "2026-11-28, , "
  })
  void theReadingsOwnDayDecides(String due, String today, Cause.Code warning) throws BadInput {
    for (ItemList list : lists().toList()) {
      Report report = judged(list, with(list, "2026-11-27", due), today);
      assertEquals(warning == null ? List.of() : List.of(warning), warnings(report));
      assertEquals(
          warning == Cause.Code.CALIBRATION_OVERDUE ? Verdict.INCOMPLETE : Verdict.PASS,
          report.overall());
    }
  }

  /** Every blank whose name says that a calibration is due, whichever instrument's. */
  @ParameterizedTest
  @MethodSource("lists")
  void everyDueDateIsHeldAgainstTheDay(ItemList list) throws BadInput {
    for (Item item : list.items()) {
      if (item instanceof Item.Recorded blank && Blank.of(blank) == Blank.DUE) {
        Records records = Records.of(list, false).with(item.id(), "2026-11-26,,,1,record");
        Report report = judged(list, records, null);
        assertEquals(Verdict.UNCLEAR, of(report, item.id()).verdict());
        assertEquals(Verdict.INCOMPLETE, report.overall());
      }
    }
  }

  /** A table without kinds holds the same dates, and the last attempt is the one that counts. */
  @ParameterizedTest
  @CsvSource({"2026-11-26, 2099-01-31, PASS", "2099-01-31, 2026-11-26, INCOMPLETE"})
  void theLastAttemptCounts(String first, String second, Verdict overall) throws BadInput {
    for (ItemList list : lists().toList()) {
      Records records = Records.of(list, false).with(due(list), second + ",,,2,", first + ",,,1,");
      assertEquals(overall, judged(list, records, null).overall());
    }
  }

  /** What is written where nobody looked. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "-",
        "--",
        "?",
        "???",
        ".",
        "n/a",
        "N/A",
        "n.a.",
        "NA",
        "none",
        "unknown",
        "tbd",
        "xxx",
        "X",
        "0",
        "000",
        "(not known)",
        "no serial number",
        "S\u00001",
        "S\u001d1",
        "S\t1",
        "S\u0085",
        "S\u20281"
      })
  void aFillerIsNoSerialNumber(String filler) throws BadInput {
    int names = 0;
    for (ItemList list : lists().toList()) {
      for (Item item : list.items()) {
        if (item instanceof Item.Recorded blank && Blank.of(blank) == Blank.NAME) {
          Records records =
              Records.of(list, false).with(item.id(), "\"" + filler + "\",,,1,record");
          Report report = judged(list, records, null);
          assertEquals(Verdict.UNCLEAR, of(report, item.id()).verdict(), item.id());
          assertEquals(Verdict.INCOMPLETE, report.overall());
          names++;
        }
      }
    }
    assertTrue(names >= 3 * lists().count());
  }

  @ParameterizedTest
  @ValueSource(strings = {"1", "S 1", "0001", "NA-7", "x1", "\u00c5", "none-2"})
  void whatTellsOneFromAnotherIs(String serial) throws BadInput {
    for (ItemList list : lists().toList()) {
      Records records =
          Records.of(list, false).with("sheet/generator-serial", serial + ",,,1,record");
      assertEquals(Verdict.PASS, judged(list, records, null).overall());
    }
  }
}
