package passband.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import org.fhir.ucum.Decimal;
import org.fhir.ucum.UcumEssenceService;
import org.fhir.ucum.UcumException;
import org.fhir.ucum.UcumService;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The table of units against the UCUM library org.fhir:ucum 1.0.10 and its table of units, UCUM
 * 2.1.
 */
class UcumTest {
  private static UcumService ucum;

  @BeforeAll
  static void load() throws UcumException {
    ucum = new UcumEssenceService(UcumService.class.getResourceAsStream("/ucum-essence.xml"));
  }

  /**
   * Degrees Celsius have no factor to another unit, and mmHg is given to six digits by UCUM itself.
   */
  @Test
  void everyUnitIsUcumsAndOfItsSize() throws UcumException {
    int compared = 0;
    for (Unit a : Units.all()) {
      assertEquals(null, ucum.validate(a.ucum()), a.symbol());
      for (Unit b : Units.all()) {
        boolean celsius =
            a.dimension().equals(Dimension.TEMPERATURE)
                || b.dimension().equals(Dimension.TEMPERATURE);
        if (celsius) {
          continue;
        }
        boolean alike = a.dimension().equals(b.dimension());
        assertEquals(
            alike, ucum.isComparable(a.ucum(), b.ucum()), a.symbol() + " and " + b.symbol());
        if (alike) {
          BigDecimal theirs =
              new BigDecimal(ucum.convert(new Decimal("7"), a.ucum(), b.ucum()).asDecimal());
          BigDecimal ours =
              Rational.of(7)
                  .times(a.factor())
                  .over(b.factor())
                  .toDecimal(30, java.math.RoundingMode.HALF_EVEN);
          MathContext twelve = new MathContext(12);
          assertEquals(
              0,
              theirs.round(twelve).compareTo(ours.round(twelve)),
              "7 " + a.symbol() + " in " + b.symbol() + ": " + theirs + ", " + ours);
          compared++;
        }
      }
    }
    assertTrue(compared > 250, "only " + compared + " pairs");
  }

  /**
   * Of the UCUM functional tests 3-126: 1 S is 0.001 g-1.m-2.C2.s; and what both common libraries
   * say of the main units.
   */
  @ParameterizedTest
  @CsvSource({
    "1, S, 0.001, g-1.m-2.C2.s",
    "6.3, g.m.s-2.A-2, 6.3, g.m.C-2",
    "50, W, 50, A2.Ohm",
    "316, mA, 0.316, A",
    "4500, V, 4.5, kV"
  })
  void publishedConversions(String value, String from, String result, String to)
      throws UcumException {
    Decimal converted = ucum.convert(new Decimal(value), from, to);
    assertEquals(0, new BigDecimal(result).compareTo(new BigDecimal(converted.asDecimal())));
    Unit a = Units.find(from);
    Unit b = Units.find(to);
    if (a != null && b != null) {
      assertEquals(
          Rational.parse(result), Rational.parse(value).times(a.factor()).over(b.factor()));
    }
  }

  @Test
  void joulesPerSecondAreWatts() {
    assertEquals(Dimension.POWER, Units.find("J/s").dimension());
    assertEquals(Dimension.FLOW, Units.find("mL/h").dimension());
    assertEquals(Units.find("L/min").factor(), Rational.of(1, 60_000));
    assertFalse(Units.find("W").dimension().equals(Units.find("J").dimension()));
    assertNull(Units.find("W/load"));
    assertNull(Units.find("/s"));
  }

  @ParameterizedTest
  @CsvSource({"Ω,ohm", "Ω,ohm", "kΩ,kohm", "µA,uA", "μA,uA"})
  void otherSpellings(String written, String symbol) {
    assertNotNull(Units.find(written));
    assertEquals(symbol, Units.find(written).symbol());
  }

  /** Common practice, no source: the slips that are made at keyboards. */
  @ParameterizedTest
  @CsvSource({
    "mw,mW",
    "MA,mA",
    "Kohm,kohm",
    "Ohms,ohm",
    "amps,A",
    "volts,V",
    "Vpk,V",
    "Vrms,V",
    "KV,kV",
    "kv,kV",
    "°C,degC",
    "sec,s",
    "hrs,h",
    "Khz,kHz",
    "l,L",
    "watts,W",
    "Watts,W",
    "percent,%",
    "mmhg,mmHg",
    "UA,uA",
    "KHZ,kHz",
    "MHZ,MHz"
  })
  void nearMissesAreRefusedAndMended(String written, String meant) {
    assertNull(Units.find(written), written);
    assertEquals(meant, Units.suggest(written).get(0));
  }

  @Test
  void whatIsNoUnitHasNoSuggestion() {
    assertEquals(List.of(), Units.suggest("furlong"));
    assertThrows(UnsupportedOperationException.class, () -> Units.symbols().add("x"));
  }
}
