package passband.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import passband.evidence.Evidence;
import passband.plan.Plan;
import passband.testing.Sheets;
import passband.testing.Snippet;

/**
 * Recomputes limits with 50-digit decimals and nothing of the project's arithmetic: every limit of
 * the demo library from the rules as read in its sources by a person, and 10,000 generated points.
 */
class RecomputationTest {
  private static final MathContext FIFTY = new MathContext(50, RoundingMode.HALF_EVEN);
  private static final BigDecimal THREE = new BigDecimal(3);

  /**
   * A tolerance of power read as current, a tolerance of the setting itself, or limits of the
   * reading.
   *
   * @param direct whether what is read is what is set
   * @param percent of the target; null for limits of the reading
   * @param least the least tolerance in watts
   * @param low limits of the reading in its unit; null for an open side
   */
  private record Rule(
      boolean direct, BigDecimal percent, BigDecimal least, BigDecimal low, BigDecimal high) {
    static Rule power(String percent, String least) {
      return new Rule(false, new BigDecimal(percent), new BigDecimal(least), null, null);
    }

    static Rule setting(String percent, String least) {
      return new Rule(true, new BigDecimal(percent), new BigDecimal(least), null, null);
    }

    static Rule reading(String low, String high) {
      return new Rule(
          false,
          null,
          null,
          low == null ? null : new BigDecimal(low),
          high == null ? null : new BigDecimal(high));
    }
  }

  private static final Map<String, Rule> RULES = new HashMap<>();
  private static final Map<String, String> TARGETS = new HashMap<>();
  private static final Map<String, String[]> STATED = new HashMap<>();

  static {
    RULES.put("bipolar-output/current", Rule.power("15", "1"));
    RULES.put("slit-output/current", Rule.power("20", "3"));
    RULES.put("flare-output/current", Rule.power("20", "3"));
    RULES.put("flare-output/peak-voltage", Rule.reading(null, "3800"));
    RULES.put("contact-alarm/trip", Rule.reading("95", "155"));
    RULES.put("mains-leakage/patient-leakage", Rule.reading(null, "50"));
    RULES.put("carve-output/current", Rule.power("20", "4"));
    RULES.put("carve-curve/current", Rule.power("20", "0"));
    RULES.put("carve-crest/crest-factor", Rule.reading(null, "2.2"));
    RULES.put("carve-stop/time", Rule.reading(null, "500"));
    RULES.put("energy/energy", Rule.setting("15", "1"));
    RULES.put("energy/peak-voltage", Rule.reading(null, "2100"));
    TARGETS.put("carve-curve/90/100", "55");
    TARGETS.put("carve-curve/90/450", "70");
    STATED.put("bipolar-output/thin/5", new String[] {"179", "219"});
    STATED.put("bipolar-output/thin/20", new String[] {"369", "428"});
    STATED.put("bipolar-output/thin/40", new String[] {"522", "606"});
    STATED.put("tack-output/tack/1", new String[] {"410", "500"});
    STATED.put("tack-output/tack/3", new String[] {"905", "1105"});
    STATED.put("tack-output/tack/5", new String[] {"1350", "1650"});
    STATED.put("carve-output/carve/20", new String[] {"253", "309"});
    STATED.put("carve-output/carve/90", new String[] {"537", "657"});
    STATED.put("carve-output/carve/180", new String[] {"759", "929"});
  }

  /**
   * Half-widths of the readings' errors, in the unit of the row: share of reading, fixed part; by
   * quantity and resolution.
   */
  private static final Map<String, String[]> ERRORS =
      Map.ofEntries(
          Map.entry("current/0.1", new String[] {"0.01", "0.3"}),
          Map.entry("current/1", new String[] {"0.01", "1"}),
          Map.entry("peak-voltage/10", new String[] {"0.03", "20"}),
          Map.entry("peak-voltage/5", new String[] {"0.01", "10"}),
          Map.entry("patient-leakage/1", new String[] {"0.01", "1"}),
          Map.entry("energy/0.1", new String[] {"0.01", "0.1"}),
          Map.entry("energy/1", new String[] {"0.01", "0.5"}),
          Map.entry("time/10", new String[] {"0", "20"}),
          Map.entry("trip/5", new String[] {"0.01", "0"}));

  @Test
  void everyLimitOfTheLibrary() {
    int rows = 0;
    for (Plan plan : List.of(Sheets.YARROW, Sheets.TEASEL, Sheets.SUNDEW)) {
      for (NamedCsvRecord row :
          CsvReader.builder().ofNamedCsvRecord(LimitsCsv.of(Evidence.of(plan).list()))) {
        checkRow(row);
        rows++;
      }
    }
    assertTrue(rows >= 50, "only " + rows + " rows");
  }

  private static void checkRow(NamedCsvRecord row) {
    String id = row.getField("point");
    String settingKey =
        row.getField("test") + "/" + row.getField("mode") + "/" + row.getField("setting");
    Rule rule = RULES.get(row.getField("test") + "/" + row.getField("quantity"));
    String[] stated = STATED.get(settingKey);
    assertTrue(rule != null || stated != null, "no rule known for " + id);
    BigDecimal low = null;
    BigDecimal high = null;
    BigDecimal nominal = null;
    boolean converted = false;
    if (rule != null && rule.percent != null) {
      BigDecimal load = new BigDecimal(row.getField("load"));
      String target =
          TARGETS.getOrDefault(
              row.getField("test") + "/" + row.getField("setting") + "/" + row.getField("load"),
              row.getField("setting"));
      BigDecimal watts = new BigDecimal(target);
      BigDecimal tolerance = watts.multiply(rule.percent).movePointLeft(2).max(rule.least);
      converted = !rule.direct;
      low = converted ? milliamperes(watts.subtract(tolerance), load) : watts.subtract(tolerance);
      high = converted ? milliamperes(watts.add(tolerance), load) : watts.add(tolerance);
      nominal = converted ? milliamperes(watts, load) : watts;
    } else if (rule != null) {
      low = rule.low;
      high = rule.high;
    }
    if (stated != null) {
      low = low == null ? new BigDecimal(stated[0]) : low.max(new BigDecimal(stated[0]));
      high = high == null ? new BigDecimal(stated[1]) : high.min(new BigDecimal(stated[1]));
    }
    BigDecimal step = new BigDecimal(row.getField("resolution"));
    assertSide(id + " lower", row.getField("lower"), low, step, RoundingMode.CEILING);
    assertSide(id + " upper", row.getField("upper"), high, step, RoundingMode.FLOOR);
    assertEquals(
        nominal == null ? "" : plain(nominal.round(new MathContext(6, RoundingMode.HALF_EVEN))),
        row.getField("nominal"),
        id);
    boolean guarded = row.getField("decision").equals("guarded");
    String[] error = ERRORS.get(row.getField("quantity") + "/" + plain(step));
    if (error == null) {
      assertEquals("", row.getField("uncertainty"), id);
      return;
    }
    BigDecimal lowU = low == null ? null : expanded(low, error, step, converted);
    BigDecimal highU = high == null ? null : expanded(high, error, step, converted);
    assertSide(
        id + " accept lower",
        row.getField("accept_lower"),
        low == null || !guarded ? low : low.add(lowU),
        step,
        RoundingMode.CEILING);
    assertSide(
        id + " accept upper",
        row.getField("accept_upper"),
        high == null || !guarded ? high : high.subtract(highU),
        step,
        RoundingMode.FLOOR);
    BigDecimal larger = lowU == null ? highU : highU == null ? lowU : lowU.max(highU);
    assertEquals(
        0,
        larger
            .round(new MathContext(3, RoundingMode.UP))
            .compareTo(new BigDecimal(row.getField("uncertainty"))),
        id);
    assertRatio(id, row.getField("accuracy_ratio"), low, high, nominal, lowU, highU);
  }

  private static void assertRatio(
      String id,
      String written,
      BigDecimal low,
      BigDecimal high,
      BigDecimal nominal,
      BigDecimal lowU,
      BigDecimal highU) {
    if (nominal == null && (low == null || high == null)) {
      // The other end of a tolerance with one side is zero; common practice, no source.
      BigDecimal only = low == null ? high : low;
      BigDecimal uncertainty = low == null ? highU : lowU;
      BigDecimal ratio = only.divide(new BigDecimal(2), FIFTY).divide(uncertainty, FIFTY);
      assertEquals(ratio.setScale(2, RoundingMode.FLOOR).toPlainString(), written, id);
      return;
    }
    BigDecimal half = nominal == null ? high.subtract(low).divide(new BigDecimal(2), FIFTY) : null;
    BigDecimal a = (nominal == null ? half : nominal.subtract(low)).divide(lowU, FIFTY);
    BigDecimal b = (nominal == null ? half : high.subtract(nominal)).divide(highU, FIFTY);
    assertEquals(a.min(b).setScale(2, RoundingMode.FLOOR).toPlainString(), written, id);
  }

  private static String plain(BigDecimal value) {
    return value.stripTrailingZeros().toPlainString();
  }

  private static BigDecimal milliamperes(BigDecimal watts, BigDecimal ohms) {
    return watts.divide(ohms, FIFTY).sqrt(FIFTY).movePointRight(3);
  }

  /** k = 2; the load's error of 1 % moves a current by half of it. */
  private static BigDecimal expanded(
      BigDecimal reading, String[] error, BigDecimal step, boolean converted) {
    BigDecimal meter = reading.multiply(new BigDecimal(error[0])).add(new BigDecimal(error[1]));
    BigDecimal half = step.divide(new BigDecimal(2), FIFTY);
    BigDecimal load = converted ? reading.multiply(new BigDecimal("0.005")) : BigDecimal.ZERO;
    BigDecimal sum = meter.multiply(meter).add(half.multiply(half)).add(load.multiply(load));
    return sum.divide(THREE, FIFTY).sqrt(FIFTY).multiply(new BigDecimal(2));
  }

  private static void assertSide(
      String id, String written, BigDecimal exact, BigDecimal step, RoundingMode inward) {
    if (exact == null) {
      assertEquals("", written, id);
      return;
    }
    // A root that is exact comes out as such from 50 digits; one that is not differs in the last of
    // them.
    BigDecimal steps = exact.round(new MathContext(45)).divide(step, FIFTY).setScale(0, inward);
    assertEquals(
        0,
        steps.multiply(step).compareTo(new BigDecimal(written)),
        id + ": " + written + " of " + exact);
  }

  // ---- generated points ----

  @Test
  void tenThousandGeneratedPoints() {
    Random random = new Random(20261002);
    int points = 0;
    while (points < 10_000) {
      points += generated(random);
    }
    assertEquals(10_000, points);
  }

  /**
   * One procedure of a hundred points, with a rule, loads, settings and a meter drawn at random.
   */
  private static int generated(Random random) {
    int percent = 5 + random.nextInt(30);
    BigDecimal least = new BigDecimal(random.nextInt(60)).movePointLeft(1);
    boolean greater = random.nextInt(4) > 0;
    String resolution = List.of("1", "0.1", "10", "2", "0.5", "5").get(random.nextInt(6));
    StringBuilder rows = new StringBuilder();
    Map<String, BigDecimal[]> expected = new HashMap<>();
    while (expected.size() < 100) {
      BigDecimal watts = new BigDecimal(100 + random.nextInt(39_900)).movePointLeft(2);
      BigDecimal ohms = new BigDecimal(10 + random.nextInt(1990));
      BigDecimal share = watts.multiply(new BigDecimal(percent)).movePointLeft(2);
      BigDecimal tolerance = greater ? share.max(least) : share.min(least);
      BigDecimal low = watts.subtract(tolerance);
      boolean usable =
          tolerance.signum() > 0 && wide(watts, tolerance, ohms, new BigDecimal(resolution));
      String id = "t/out/hew/" + plain(watts) + "W/" + plain(ohms) + "ohm/current";
      if (usable && low.signum() != 0 && !expected.containsKey(id)) {
        expected.put(
            id, new BigDecimal[] {low.signum() < 0 ? null : low, watts.add(tolerance), ohms});
        rows.append(
            String.format(Locale.ROOT, "      hew | %s | %s%n", watts.toPlainString(), ohms));
      }
    }
    String rule =
        percent
            + " % of setting or "
            + least
            + " W, whichever is "
            + (greater ? "greater" : "smaller");
    Snippet snippet = Snippet.compile(source(rule, resolution, rows.toString().replace("\r", "")));
    assertEquals(1, snippet.plans().size(), snippet.report());
    assertTrue(
        snippet.diagnostics().stream().noneMatch(d -> !d.code().allowable()), snippet.report());
    int compared = 0;
    for (NamedCsvRecord row :
        CsvReader.builder()
            .ofNamedCsvRecord(LimitsCsv.of(Evidence.of(snippet.plans().get(0)).list()))) {
      BigDecimal[] point = expected.get(row.getField("point"));
      assertNotNull(point, row.getField("point"));
      BigDecimal step = new BigDecimal(resolution);
      assertSide(
          row.getField("point"),
          row.getField("lower"),
          point[0] == null ? null : milliamperes(point[0], point[2]),
          step,
          RoundingMode.CEILING);
      assertSide(
          row.getField("point"),
          row.getField("upper"),
          milliamperes(point[1], point[2]),
          step,
          RoundingMode.FLOOR);
      compared++;
    }
    return compared;
  }

  private static boolean wide(
      BigDecimal watts, BigDecimal tolerance, BigDecimal ohms, BigDecimal step) {
    BigDecimal low = watts.subtract(tolerance).max(BigDecimal.ZERO);
    BigDecimal width =
        milliamperes(watts.add(tolerance), ohms)
            .subtract(low.signum() == 0 ? BigDecimal.ZERO : milliamperes(low, ohms));
    return width.compareTo(step.multiply(new BigDecimal(2))) > 0;
  }

  private static String source(String rule, String resolution, String rows) {
    return """
        device gen "Gen" {
          outlet out "Out" {
            pole a "a"
            pole b "b"
          }
          mode hew "Hew" on out {
            setting power 0.01 W to 1 kW step 0.01 W
            load unknown because "Each source has loads of its own."
            peak-voltage at most 1 kV
            duty continuous
          }
          action activate "Press the key."
        }
        analyzer meter "Meter" {
          jack high "H" floating
          jack low "L"
          settle 1 s
          load from high to low {
            values 1 ohm to 2 kohm step 1 ohm
            error 0 %%
            power 2 kW continuous
          }
          measure current {
            range 0.1 mA to 10 A
            resolution %s mA
            error 1 %% of reading
          }
        }
        leads set {
          lead red   "red",   rated 1 kV
          lead black "black", rated 1 kV
        }
        procedure p "P" {
          revision "A" on 2026-01-01
          device gen
          analyzer meter
          leads set
          caution burn "Burns."
          setup load "Load" {
            connect red   from outlet.a to analyzer.high
            connect black from outlet.b to analyzer.low
          }
          test t "T" {
            outlet out
            setup  load
            accept power within %s, read as current
            table {
              mode | setting/W | load/ohm
        %s    }
          }
        }
        """
        .formatted(resolution, rule, rows);
  }
}
