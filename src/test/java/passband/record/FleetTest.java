package passband.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import passband.evidence.BadInput;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.evidence.ItemNames;
import passband.evidence.LimitsWriter;
import passband.evidence.Seal;
import passband.render.FleetReport;
import passband.render.RecordJson;
import passband.testing.Records;
import passband.testing.Sheets;

class FleetTest {
  private static final ItemList LIST = Evidence.of(Sheets.YARROW).list();
  private static final KeptFile LIMITS =
      KeptFile.of("limits.json", LimitsWriter.of(LIST).getBytes(StandardCharsets.UTF_8));
  private static final LocalDate TODAY = LocalDate.of(2030, 1, 1);

  /** The first as-found reading with limits on both sides. */
  private static final Item.Reading POINT =
      LIST.items().stream()
          .filter(item -> item instanceof Item.Reading)
          .map(item -> (Item.Reading) item)
          .filter(r -> r.limits() != null && r.limits().acceptLower() != null)
          .filter(r -> r.limits().acceptUpper() != null)
          .filter(r -> LIST.phases().get(0).equals(r.head().phase()))
          .findFirst()
          .orElseThrow();

  private static byte[] record(String serial, String date, BigDecimal value) throws BadInput {
    return record(serial, date, value, "A" + date.substring(0, 4) + ",,,1,record");
  }

  private static byte[] record(String serial, String date, BigDecimal value, String... analyzer)
      throws BadInput {
    String csv =
        Records.of(LIST, false)
            .with("sheet/generator-serial", serial + ",,,1,record")
            .with("sheet/date", date + ",,,1,record")
            .with("sheet/analyzer-serial", analyzer)
            .with("sheet/analyzer-due", "2099-01-01,,,1,record")
            .with(
                POINT.id(),
                Records.reading(
                    value.setScale(POINT.scale().decimals()).toPlainString(), POINT.scale().unit()))
            .csv();
    KeptFile readings = KeptFile.of("r.csv", csv.getBytes(StandardCharsets.UTF_8));
    VisitRecord record = VisitRecord.of("1", null, Map.of(), LIMITS, readings);
    return RecordJson.of(record).getBytes(StandardCharsets.UTF_8);
  }

  private static RecordSummary summary(String file, String serial, String date, BigDecimal value)
      throws BadInput {
    return RecordSummary.read(file, record(serial, date, value));
  }

  private static final BigDecimal GOOD = Records.middle(POINT);
  private static final BigDecimal BAD = GOOD.multiply(BigDecimal.TEN);

  @Test
  void totalsAreThoseOfTheRecords() throws BadInput {
    List<RecordSummary> all =
        List.of(
            summary("d", "S2", "2029-06-01", GOOD),
            summary("c", "S1", "2028-03-01", GOOD),
            summary("b", "S1", "2029-03-01", BAD),
            summary("a", "S1", "2027-03-01", GOOD));
    Fleet fleet = Fleet.of(all, List.of(), 365, TODAY);
    assertEquals(List.of("S1", "S2"), fleet.units().stream().map(Fleet.Unit::serial).toList());
    assertEquals(
        List.of("a", "c", "b"),
        fleet.units().get(0).visits().stream().map(RecordSummary::file).toList());
    assertEquals(LocalDate.of(2030, 6, 1), fleet.units().get(1).due());
    assertFalse(fleet.units().get(1).overdue(LocalDate.of(2030, 6, 1)));
    assertTrue(fleet.units().get(1).overdue(LocalDate.of(2030, 6, 2)));
    assertTrue(fleet.units().get(1).passed());
    assertFalse(fleet.units().get(0).passed());
    assertEquals(LocalDate.of(2029, 3, 1), fleet.units().get(0).due(), "due at once");
    String device = LIST.source().device();
    assertEquals(List.of(new Fleet.Rate(device, "", 1, 4)), fleet.models());
    assertEquals(
        List.of(new Fleet.Rate(device, ItemNames.of(LIST).of(POINT), 1, 4)), fleet.points());
    assertEquals("fail", fleet.units().get(0).last().overall());
    String csv = FleetReport.csv(fleet, TODAY);
    assertEquals(3, csv.lines().count());
    assertTrue(csv.contains(",S1,yarrow-service,"), csv);
  }

  /** Whatever the order in which the files are read. */
  @Test
  void theOrderOfTheFilesDoesNotMatter() throws BadInput {
    List<RecordSummary> all = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      BigDecimal value = GOOD.add(POINT.scale().resolution().multiply(BigDecimal.valueOf(i)));
      all.add(summary("f" + i, "S" + i % 2, 2026 + i + "-12-01", value));
    }
    String expected = FleetReport.text(Fleet.of(all, List.of(), 365, TODAY), TODAY);
    Random random = new Random(4);
    for (int run = 0; run < 20; run++) {
      java.util.Collections.shuffle(all, random);
      assertEquals(expected, FleetReport.text(Fleet.of(all, List.of(), 365, TODAY), TODAY));
    }
  }

  /** A rise of a tenth of the accepted width a year: the line is outside in about five years. */
  @Test
  void aDriftIsFoundAndItsDaySaid() throws BadInput {
    Item.Limits limits = java.util.Objects.requireNonNull(POINT.limits());
    BigDecimal low = java.util.Objects.requireNonNull(limits.acceptLower());
    BigDecimal high = java.util.Objects.requireNonNull(limits.acceptUpper());
    BigDecimal step =
        high.subtract(low)
            .divide(BigDecimal.TEN)
            .setScale(POINT.scale().decimals(), java.math.RoundingMode.FLOOR);
    List<RecordSummary> all = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      BigDecimal value = low.add(step.multiply(BigDecimal.valueOf(i + 1)));
      all.add(summary("f" + i, "S", 2026 + i + "-12-01", value));
    }
    Fleet.Drift first =
        Fleet.of(all, List.of(), 365, TODAY).drifts().stream()
            .filter(drift -> drift.last().id().equals(POINT.id()))
            .findFirst()
            .orElseThrow();
    assertEquals(4, first.trend().readings().size());
    double days = (high.doubleValue() - first.last().value()) / first.trend().line().slope();
    assertTrue(first.inside() <= days, first.inside() + " of " + days);
    LocalDate day = first.until();
    assertFalse(first.trend().crosses(day));
    assertTrue(first.trend().crosses(day.plusDays(1)));
    assertTrue(first.until().isAfter(LocalDate.of(2030, 1, 1)));
  }

  @Test
  void anInstrumentIsFoundByItsSerialNumberAndTheDays() throws BadInput {
    Fleet fleet =
        Fleet.of(
            List.of(
                summary("a", "S1", "2028-03-01", GOOD),
                summary("b", "S2", "2028-09-01", GOOD),
                summary("c", "S3", "2029-03-01", GOOD)),
            List.of(),
            365,
            TODAY);
    LocalDate march = LocalDate.of(2028, 3, 1);
    assertEquals(List.of("a", "b"), files(fleet.using(" a2028 ", null, null).visits()));
    assertEquals(List.of("a"), files(fleet.using("A2028", march, march).visits()));
    assertEquals(List.of("b"), files(fleet.using("A2028", march.plusDays(1), null).visits()));
    assertEquals(List.of(), files(fleet.using("A2027", null, null).visits()));
    assertEquals(List.of("A2028", "A2029"), List.copyOf(fleet.instruments()));
  }

  private static RecordSummary summary(
      String file, String serial, String date, BigDecimal value, String analyzer) throws BadInput {
    String csv =
        new String(record(serial, date, value), StandardCharsets.UTF_8)
            .replace("\"serial\": \"A" + date.substring(0, 4) + "\"", "\"serial\": " + analyzer)
            .replaceFirst("\"seal\": \"[0-9a-f]{64}\"", "\"seal\": \"" + Seal.OPEN + "\"");
    return RecordSummary.read(file, Seal.sealed(csv).getBytes(StandardCharsets.UTF_8));
  }

  /** A record that may be of the instrument asked for is named: an auditor has to look at it. */
  @Test
  void whatDoesNotTellItsInstrumentIsNamed() throws BadInput {
    List<String> same = List.of("\"an-2\"", "\" AN\u20112 \"", "\"AN\u20132\"");
    List<String> perhaps =
        List.of("null", "\"unknown\"", "\"AN2\"", "\"AN 2\"", "\"AN-2 (spare)\"", "\"AN-7/AN-2\"");
    List<String> others = List.of("\"AN-21\"", "\"AN-3\"", "\"N-2\"");
    List<RecordSummary> all = new ArrayList<>();
    for (List<String> written : List.of(same, perhaps, others)) {
      for (String one : written) {
        all.add(summary(one, "S" + all.size(), "2028-03-01", GOOD, one));
      }
    }
    Fleet fleet = Fleet.of(all, List.of(), 365, TODAY);
    LocalDate day = LocalDate.of(2028, 3, 1);
    Fleet.Uses uses = fleet.using("AN-2", day, day);
    assertEquals(Set.copyOf(same), Set.copyOf(files(uses.visits())));
    assertEquals(
        Set.copyOf(perhaps),
        uses.doubtful().stream().map(Fleet.LeftOut::file).collect(Collectors.toSet()));
    assertEquals(new Fleet.Uses(List.of(), List.of()), fleet.using("AN-2", day.plusDays(1), null));
    String text = FleetReport.usesText(uses);
    assertTrue(text.startsWith("3 records\n"), text);
    assertEquals(perhaps.size(), text.lines().filter(l -> l.startsWith("perhaps: ")).count());
  }

  /** An instrument that was changed for another during the visit was used all the same. */
  @Test
  void anInstrumentThatWasChangedIsFound() throws BadInput {
    String[][] written = {
      {"AN-2,,,1,record", "AN-3,,,2,record"}, {"AN-2,,,1,record", "AN-3,,,1,record"}
    };
    for (String[] analyzer : written) {
      RecordSummary one = RecordSummary.read("a", record("S1", "2029-01-01", GOOD, analyzer));
      Fleet fleet = Fleet.of(List.of(one), List.of(), 365, TODAY);
      for (String serial : List.of("AN-2", "AN-3")) {
        assertEquals(List.of("a"), files(fleet.using(serial, null, null).visits()), serial);
      }
      assertEquals(List.of("AN-2", "AN-3"), fleet.instruments());
    }
  }

  /** A generator whose number was typed in other letters is one; one that may be is named. */
  @Test
  void aGeneratorIsOneHoweverItsNumberIsTyped() throws BadInput {
    Fleet fleet =
        Fleet.of(
            List.of(
                summary("a", "s-1", "2028-03-01", GOOD),
                summary("b", "S\u20111", "2029-03-01", BAD),
                summary("c", "S1", "2029-04-01", GOOD)),
            List.of(),
            365,
            TODAY);
    assertEquals(2, fleet.generators());
    assertEquals(List.of("a", "b"), files(fleet.units().get(0).visits()));
    assertEquals(1, fleet.doubts().size());
    assertTrue(fleet.doubts().get(0).contains("'S1', 'S\u20111'"), fleet.doubts().toString());
    assertTrue(FleetReport.text(fleet, TODAY).contains("\nin doubt: the serial numbers "));
    assertTrue(FleetReport.html(fleet, TODAY).contains("In doubt"));
  }

  /**
   * Another procedure, or a record of the same day, does not make a failed generator a good one.
   */
  @Test
  void aFailureIsNotCoveredByAnotherVisit() throws BadInput {
    RecordSummary bad = summary("b", "S1", "2029-03-01", BAD);
    RecordSummary good = summary("c", "S1", "2029-05-01", GOOD);
    RecordSummary.Visit other =
        new RecordSummary.Visit(good.visit().device(), "quick-check", "A", good.visit().phases());
    RecordSummary quick =
        new RecordSummary(
            "q",
            good.seal(),
            good.readings(),
            other,
            good.serial(),
            good.date(),
            good.overall(),
            good.failedAsFound(),
            good.instruments(),
            good.values(),
            good.names());
    Fleet two = Fleet.of(List.of(bad, quick), List.of(), 365, TODAY);
    assertEquals(1, two.generators());
    assertEquals(
        List.of("yarrow-service fail 2029-03-01", "quick-check pass 2030-05-01"),
        two.units().stream()
            .map(u -> u.last().visit().procedure() + " " + u.last().overall() + " " + u.due())
            .toList());
    for (String file : List.of("a", "z")) {
      RecordSummary sameDay = summary(file, "S1", "2029-03-01", GOOD);
      Fleet.Unit unit = Fleet.of(List.of(bad, sameDay), List.of(), 365, TODAY).units().get(0);
      assertEquals(2, unit.visits().size());
      assertFalse(unit.passed(), "of one day the worse counts, whatever the files are called");
    }
    assertTrue(Fleet.of(List.of(bad, good), List.of(), 365, TODAY).units().get(0).passed());
  }

  /** A slip in a year must not put off a due date. */
  @Test
  void aVisitThatIsYetToComeIsLeftOut() throws BadInput {
    List<RecordSummary> all =
        List.of(summary("a", "S1", "2030-01-01", GOOD), summary("b", "S1", "2062-01-01", GOOD));
    Fleet fleet = Fleet.of(all, List.of(), 365, TODAY);
    assertEquals(LocalDate.of(2031, 1, 1), fleet.units().get(0).due());
    assertEquals(
        List.of(new Fleet.LeftOut("b", "its date 2062-01-01 is after 2030-01-01")), fleet.left());
  }

  /** One generator with many bad points does not hide the others. */
  @Test
  void eachGeneratorThatDriftsIsSaidOnce() throws BadInput {
    List<RecordSummary> all = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      for (int unit = 0; unit < 3; unit++) {
        BigDecimal value = GOOD.add(POINT.scale().resolution().multiply(BigDecimal.valueOf(i % 2)));
        all.add(summary("f" + i + unit, "S" + unit, 2027 + i + "-05-0" + (unit + 1), value));
      }
    }
    Fleet fleet = Fleet.of(all, List.of(), 365, TODAY);
    assertTrue(fleet.drifts().size() > FleetReport.WORST, "many points have three readings");
    List<String> said =
        FleetReport.text(fleet, TODAY)
            .lines()
            .filter(line -> line.startsWith("drift: "))
            .map(line -> line.split(" ")[2].replace(",", ""))
            .sorted()
            .toList();
    assertEquals(List.of("S0", "S1", "S2"), said);
  }

  /** No identity of a point is printed anywhere, but what its sheet calls it. */
  @Test
  void pointsHaveTheirNamesOfTheSheet() throws BadInput {
    List<RecordSummary> all = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      BigDecimal value = GOOD.add(POINT.scale().resolution().multiply(BigDecimal.valueOf(i % 2)));
      all.add(summary("f" + i, "S", 2020 + i + "-05-01", i == 1 ? BAD : value));
    }
    Fleet fleet = Fleet.of(all, List.of(), 365, TODAY);
    ItemNames names = ItemNames.of(LIST);
    String text = FleetReport.text(fleet, TODAY);
    String html = FleetReport.html(fleet, TODAY);
    for (Item item : LIST.items()) {
      assertFalse(text.contains(item.id()), text);
      assertFalse(html.contains(item.id()), item.id());
    }
    assertTrue(text.contains(" " + names.of(POINT) + ": 1 of 4\n"), text);
    for (Fleet.Drift drift : fleet.drifts()) {
      assertEquals(names.of(drift.last().id()), drift.name());
    }
    assertFalse(fleet.drifts().isEmpty());
  }

  /** Of one of anything, and of several. */
  @Test
  void numbersAgreeWithTheirNouns() throws BadInput {
    Fleet one = Fleet.of(List.of(summary("a", "S1", "2025-03-01", BAD)), List.of(), 365, TODAY);
    Fleet two =
        Fleet.of(
            List.of(
                summary("a", "S1", "2025-03-01", BAD),
                summary("b", "S1", "2025-04-01", GOOD),
                summary("c", "S2", "2025-05-01", GOOD)),
            List.of(new Fleet.LeftOut("d", "damaged"), new Fleet.LeftOut("e", "damaged")),
            365,
            TODAY);
    String single =
        FleetReport.text(one, TODAY) + FleetReport.usesText(one.using("A2025", null, null));
    String several =
        FleetReport.text(two, TODAY) + FleetReport.usesText(two.using("A2025", null, null));
    assertTrue(single.startsWith("1 generator, 1 visit, "), single);
    assertTrue(single.contains(": 1 of 1 visit\n") && single.contains("\n1 record\n"), single);
    assertTrue(several.startsWith("2 generators, 3 visits, "), several);
    assertTrue(several.contains(", 2 files left out\n"), several);
    assertTrue(several.contains(": 1 of 3 visits\n") && several.contains("\n3 records\n"), several);
  }

  private static List<String> files(List<RecordSummary> visits) {
    return visits.stream().map(RecordSummary::file).toList();
  }

  @Test
  void theSameReadingsCountOnce() throws BadInput {
    RecordSummary one = summary("a", "S1", "2028-03-01", GOOD);
    RecordSummary again = summary("b", "S1", "2028-03-01", GOOD);
    Fleet fleet = Fleet.of(List.of(one, again), List.of(), 365, TODAY);
    assertEquals(1, fleet.units().get(0).visits().size());
    assertEquals(List.of(new Fleet.LeftOut("b", "the same readings are in a")), fleet.left());
    RecordSummary saved =
        new RecordSummary(
            "b",
            again.seal(),
            "another digest",
            again.visit(),
            again.serial(),
            again.date(),
            "incomplete",
            again.failedAsFound(),
            again.instruments(),
            again.values(),
            again.names());
    fleet = Fleet.of(List.of(one, saved), List.of(), 365, TODAY);
    assertEquals(List.of("b"), files(fleet.units().get(0).visits()), "the worse is kept");
    assertEquals(
        List.of(
            new Fleet.LeftOut(
                "a",
                "the same values of the same day are in b, which says 'incomplete', this 'pass':"
                    + " verify both")),
        fleet.left());
  }

  /** A record of which one byte is another: it is refused, or says the same. */
  @Test
  void aDamagedRecordIsInNoTotal() throws BadInput {
    byte[] good = record("S1", "2028-03-01", GOOD);
    Random random = new Random(8);
    int refused = 0;
    for (int run = 0; run < 400; run++) {
      byte[] bad = good.clone();
      int at = random.nextInt(bad.length);
      bad[at] ^= (byte) (1 << random.nextInt(7));
      try {
        RecordSummary.read("r", bad);
      } catch (BadInput e) {
        refused++;
      }
    }
    assertEquals(400, refused);
    for (String other : List.of("", "[]", "7", "{}", "{\"format\": \"passband-limits/3\"}")) {
      assertThrows(
          BadInput.class, () -> RecordSummary.read("r", other.getBytes(StandardCharsets.UTF_8)));
    }
    String twice =
        new String(good, StandardCharsets.UTF_8)
            .replaceFirst("\n  \"overall\"", "\n  \"overall\": \"fail\",$0")
            .replaceFirst("\"seal\": \"[0-9a-f]{64}\"", "\"seal\": \"" + Seal.OPEN + "\"");
    byte[] resealed = Seal.sealed(twice).getBytes(StandardCharsets.UTF_8);
    BadInput said = assertThrows(BadInput.class, () -> RecordSummary.read("r", resealed));
    assertEquals("it says 'overall' twice", said.getMessage());
    BadInput nobody =
        assertThrows(BadInput.class, () -> summary("r", "unknown", "2028-03-01", GOOD));
    assertTrue(String.valueOf(nobody.getMessage()).contains("serial number"));
    BadInput never = assertThrows(BadInput.class, () -> summary("r", "S1", "2028-13-01", GOOD));
    assertTrue(String.valueOf(never.getMessage()).contains("date"));
  }
}
