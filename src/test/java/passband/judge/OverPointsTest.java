package passband.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import passband.evidence.BadInput;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.testing.Examples;
import passband.testing.Records;
import passband.testing.Snippet;

/** Values that compare points: what they are called, and what they come to. */
class OverPointsTest {
  private static final String PROCEDURE =
      """
        revision "A" on 2026-01-31
        device gen
        analyzer meter
        leads set
        caution burn "Output burns."
        setup mono "Mono" {
          connect red   from outlet.active     to analyzer.high
          connect plate from device.back.plate to analyzer.low
          connect grey  from outlet.cut        to analyzer.key
        }
        test t "T" {
          outlet one, two
          setup  mono
          accept power from output, read as voltage
          derive spread  = max(voltage) - min(voltage) over outlet, resolution 0.1 V
          derive ratio   = last(voltage) / first(voltage) over setting, resolution 0.001
          derive least   = rise(voltage) over setting, resolution 0.1 V
          derive middle  = mean(voltage) over repeat, resolution 0.1 V
          accept spread  at most 400 V
          accept ratio   at most 400
          accept least   at least 0.1 V
          accept middle  at most 4 kV
          table {
            mode | setting/W  | load/ohm | repeat
            hew  | 20, 60, 90 | 400      | 1, 2
          }
        }
      """;

  private static ItemList items() {
    Snippet snippet = Examples.compile("procedure", PROCEDURE);
    List<String> faults = new ArrayList<>();
    snippet.diagnostics().stream()
        .filter(d -> d.isError() && !d.code().id().endsWith("-untested"))
        .forEach(d -> faults.add(d.toString()));
    assertEquals(List.of(), faults);
    return Evidence.of(snippet.plan()).list();
  }

  private static String id(String outlet, String setting, String repeat, String quantity) {
    return String.join("/", "t", outlet, "hew", setting, "400ohm", "repeat=" + repeat, quantity);
  }

  /** Each stands once, in the place of what differs a star. */
  @Test
  void theIdentityHasAStar() {
    List<String> derived = new ArrayList<>();
    for (Item item : items().items()) {
      if (item instanceof Item.Derived) {
        derived.add(item.id());
      }
    }
    List<String> expected = new ArrayList<>();
    for (String repeat : List.of("1", "2")) {
      List.of("20W", "60W", "90W").forEach(s -> expected.add(id("*", s, repeat, "spread")));
      for (String outlet : List.of("one", "two")) {
        expected.add(id(outlet, "*", repeat, "ratio"));
        expected.add(id(outlet, "*", repeat, "least"));
      }
    }
    for (String outlet : List.of("one", "two")) {
      List.of("20W", "60W", "90W").forEach(s -> expected.add(id(outlet, s, "*", "middle")));
    }
    Collections.sort(expected);
    Collections.sort(derived);
    assertEquals(expected, derived);
  }

  /** In a thousand records each comes to what is worked out here, apart from the formula. */
  @Test
  void itComesToWhatItsReadingsSay() throws BadInput {
    ItemList list = items();
    Random random = new Random(17);
    for (int trial = 0; trial < 1000; trial++) {
      Map<String, BigDecimal> read = new TreeMap<>();
      Records record = Records.of(list, false);
      for (Item item : list.items()) {
        if (item instanceof Item.Reading reading) {
          int decimals = reading.scale().decimals();
          BigDecimal value = BigDecimal.valueOf(500 + random.nextInt(2500), 1);
          read.put(item.id(), value);
          record.with(
              item.id(),
              Records.reading(value.setScale(decimals).toPlainString(), reading.scale().unit()));
        }
      }
      Map<String, Judgement> judged = new TreeMap<>();
      Judge.judge(list, record.readings(), null)
          .judgements()
          .forEach(j -> judged.put(j.item().id(), j));
      for (String repeat : List.of("1", "2")) {
        List<String> settings = List.of("20W", "60W", "90W");
        for (String s : settings) {
          BigDecimal one = read.get(id("one", s, repeat, "voltage"));
          BigDecimal two = read.get(id("two", s, repeat, "voltage"));
          same(one.subtract(two).abs(), judged.get(id("*", s, repeat, "spread")));
        }
        for (String outlet : List.of("one", "two")) {
          List<BigDecimal> three = new ArrayList<>();
          settings.forEach(s -> three.add(read.get(id(outlet, s, repeat, "voltage"))));
          BigDecimal up = three.get(1).subtract(three.get(0));
          same(
              up.min(three.get(2).subtract(three.get(1))),
              judged.get(id(outlet, "*", repeat, "least")));
          same(
              three.get(2).divide(three.get(0), 5, RoundingMode.HALF_EVEN),
              judged.get(id(outlet, "*", repeat, "ratio")));
        }
      }
      for (String outlet : List.of("one", "two")) {
        for (String s : List.of("20W", "60W", "90W")) {
          BigDecimal sum =
              read.get(id(outlet, s, "1", "voltage")).add(read.get(id(outlet, s, "2", "voltage")));
          same(
              sum.divide(BigDecimal.valueOf(2), 5, RoundingMode.HALF_EVEN),
              judged.get(id(outlet, s, "*", "middle")));
        }
      }
    }
  }

  private static void same(BigDecimal expected, Judgement judged) {
    BigDecimal shown = judged.value();
    assertTrue(
        shown != null && shown.subtract(expected).abs().compareTo(new BigDecimal("0.00001")) <= 0,
        () -> judged.item().id() + ": " + expected + " and " + shown);
  }

  /**
   * The uncertainty of a mean of repeats, worked out here apart from the formula: the instrument's
   * error, the resolution over √n, the scatter s/√n; the effective degrees of freedom by Welch and
   * Satterthwaite. That of a spread over outlets has no scatter in it.
   */
  @Test
  void theScatterOfRepeatsIsInTheUncertaintyOfTheirMean() throws BadInput {
    ItemList list = items();
    Random random = new Random(8);
    for (int trial = 0; trial < 100; trial++) {
      Records record = Records.of(list, false);
      Map<String, Double> read = new TreeMap<>();
      for (Item item : list.items()) {
        if (item instanceof Item.Reading reading) {
          BigDecimal value = BigDecimal.valueOf(1500 + random.nextInt(40), 1);
          value = value.setScale(reading.scale().decimals(), RoundingMode.HALF_EVEN);
          read.put(item.id(), value.doubleValue());
          record.with(item.id(), Records.reading(value.toPlainString(), reading.scale().unit()));
        }
      }
      for (Judgement judged : Judge.judge(list, record.readings(), null).judgements()) {
        if (judged.item() instanceof Item.Derived derived) {
          boolean mean = derived.scale().quantity().equals("middle");
          assertEquals(mean, !derived.calculation().repeats().isEmpty(), derived.id());
          if (mean) {
            List<Double> values = new ArrayList<>();
            derived.calculation().parts().values().forEach(id -> values.add(read.get(id)));
            Item.Reading one =
                (Item.Reading)
                    list.items().stream()
                        .filter(i -> i.id().equals(id("one", "20W", "1", "voltage")))
                        .findFirst()
                        .orElseThrow();
            agrees(judged, one, values.get(0), values.get(1));
          }
        }
      }
    }
  }

  /** The instrument's error is taken as different or as the same in both, whichever gives more. */
  private static void agrees(Judgement judged, Item.Reading reading, double a, double b) {
    double scatter = (a - b) * (a - b) / 4;
    double apart = scatter;
    double common = scatter;
    for (Item.Contribution c : reading.budget()) {
      double first = Budget.standard(c, a) / 2;
      double second = Budget.standard(c, b) / 2;
      boolean shared = !c.name().equals(Item.Contribution.RESOLUTION);
      apart += first * first + second * second;
      common += shared ? (first + second) * (first + second) : first * first + second * second;
    }
    double expected = Math.max(expanded(apart, scatter), expanded(common, scatter));
    assertEquals(expected, judged.uncertainty(), 1e-6 * expected);
    assertEquals(scatter == 0, judged.freedom() == null);
  }

  private static double expanded(double variance, double scatter) {
    if (scatter == 0) {
      return 2 * Math.sqrt(variance);
    }
    double outside = 1 - new NormalDistribution().cumulativeProbability(2);
    int freedom = (int) Math.min(200, Math.max(1, variance * variance / scatter / scatter));
    return new TDistribution(freedom).inverseCumulativeProbability(1 - outside)
        * Math.sqrt(variance);
  }

  /** Without one of its readings it is not said to pass. */
  @Test
  void withoutOneOfItsReadingsItDoesNotPass() throws BadInput {
    ItemList list = items();
    for (Item item : list.items()) {
      if (item instanceof Item.Derived derived) {
        for (String part : derived.calculation().parts().values()) {
          Records record = Records.of(list, false);
          record.without(part);
          Report report = Judge.judge(list, record.readings(), null);
          Judgement judged =
              report.judgements().stream().filter(j -> j.item() == item).findFirst().orElseThrow();
          assertEquals(Verdict.NOT_DONE, judged.verdict(), item.id());
        }
      }
    }
  }
}
