package passband.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.evidence.BadInput;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.testing.Records;
import passband.testing.Sheets;

/** A peak is never below the RMS value of the same wave, whatever else their limits accept. */
class SameWaveTest {
  private static final ItemList LIST = Evidence.of(Sheets.WAVES).list();
  private static final String POINT = "carve-wave/hand/carve/90W/250ohm/";

  private static Report judged(Records records) throws BadInput {
    return Judge.judge(LIST, records.readings(), null);
  }

  private static Judgement of(Report report, String id) {
    return report.judgements().stream()
        .filter(j -> j.item().id().equals(id))
        .findAny()
        .orElseThrow();
  }

  /** 600 mA into 250 ohm are 150 V. */
  @ParameterizedTest
  @CsvSource({
    "212, V, 150, V, 600, mA, pass, pass, pass",
    "150, V, 150, V, 600, mA, pass, pass, pass",
    "149, V, 150, V, 600, mA, unclear, unclear, unclear",
    "149, V, 149, V, 600, mA, unclear, pass, unclear",
    "149, V, 150, V, 596, mA, unclear, unclear, pass",
    "0.149, kV, 150, V, 0.596, A, unclear, unclear, pass",
    "212, V, 150, V, 0.600, A, pass, pass, pass",
    "150, V, 250, V, 600, mA, unclear, fail, pass",
    "1500, V, 150, V, 600, mA, fail, pass, pass"
  })
  void neitherOfTheTwoPasses(
      String peak,
      String peakUnit,
      String rms,
      String rmsUnit,
      String current,
      String currentUnit,
      String ofPeak,
      String ofRms,
      String ofCurrent)
      throws BadInput {
    String point = POINT + "as-found/";
    Report report =
        judged(
            Records.of(LIST, false)
                .with(point + "peak-voltage", Records.reading(peak, peakUnit))
                .with(point + "voltage", Records.reading(rms, rmsUnit))
                .with(point + "current", Records.reading(current, currentUnit)));
    assertEquals(ofPeak, of(report, point + "peak-voltage").verdict().word());
    assertEquals(ofRms, of(report, point + "voltage").verdict().word());
    assertEquals(ofCurrent, of(report, point + "current").verdict().word());
    boolean good = Stream.of(ofPeak, ofRms, ofCurrent).allMatch("pass"::equals);
    assertEquals(good, report.overall() == Verdict.PASS, report.overall().word());
    for (Judgement one : report.judgements()) {
      boolean said = one.causes().stream().anyMatch(c -> c.code() == Cause.Code.PEAK_BELOW_RMS);
      assertTrue(!said || one.verdict() != Verdict.PASS, one.toString());
    }
  }

  /** Every pair of every point and phase, whether it has limits or is only calculated from. */
  @Test
  void ofEveryPairOfASheet() throws BadInput {
    assertEquals(Verdict.PASS, judged(Records.of(LIST, true)).overall());
    SameWave waves = new SameWave(LIST);
    int pairs = 0;
    for (Item item : LIST.items()) {
      if (item instanceof Item.Reading peak
          && peak.scale().quantity().startsWith("peak-")
          && !waves.others(peak).isEmpty()) {
        for (Item.Reading rms : waves.others(peak)) {
          assertEquals(List.of(peak), waves.others(rms));
          assertEquals(peak.where(), rms.where());
          assertEquals(peak.head().phase(), rms.head().phase());
          pairs++;
        }
        String one = BigDecimal.ONE.setScale(peak.scale().decimals()).toPlainString();
        Records low = Records.of(LIST, true).with(peak.id(), Records.reading(one, "V"));
        Report report = judged(low);
        assertEquals(Verdict.UNCLEAR, of(report, peak.id()).verdict());
        waves
            .others(peak)
            .forEach(o -> assertNotEquals(Verdict.PASS, of(report, o.id()).verdict()));
        assertNotEquals(Verdict.PASS, report.overall());
      }
    }
    assertEquals(5, pairs);
  }

  /** What was not read, or cannot be told, says nothing of the other. */
  @ParameterizedTest
  @CsvSource({"'', not done", "'1,,,1,reading', unclear", "'1,A,,1,reading', unclear"})
  void whatIsNotKnownIsNotCompared(String row, String verdict) throws BadInput {
    String point = POINT + "as-found/";
    Report report = judged(Records.of(LIST, false).with(point + "peak-voltage", row));
    assertEquals(verdict, of(report, point + "peak-voltage").verdict().word());
    assertEquals(Verdict.PASS, of(report, point + "voltage").verdict());
    assertEquals(Verdict.INCOMPLETE, report.overall());
  }
}
