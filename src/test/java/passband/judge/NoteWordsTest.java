package passband.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.evidence.ItemNames;
import passband.evidence.WrittenFormula;
import passband.plan.Plan;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Wave;
import passband.testing.Sheets;
import passband.words.Language;

/** A report is in one language, and no item of it is called by the name of its place twice. */
class NoteWordsTest {
  private static final ItemNames NAMES = ItemNames.of(Evidence.of(Sheets.YARROW).list());

  private static final List<Language> OTHERS = List.of(Language.GERMAN, Language.FRENCH);

  private static String note(Cause.Code code, String note, Language language) {
    return NoteWords.of(code, note, NAMES, language);
  }

  /** Whatever is read: both waves, read or worked out through the load. */
  @Test
  void aPeakBelowItsRmsValueIsSaidInTheLanguage() {
    for (Wave wave : Wave.values()) {
      for (String source : List.of(wave.rms(), wave.through())) {
        String english = PeakAndRms.isBelow(wave.peak(), source);
        for (Language language : OTHERS) {
          String said = note(Cause.Code.PEAK_BELOW_RMS, english, language);
          assertNotEquals(english, said);
          assertFalse(said.contains(" is below ") || said.contains(wave.peak()), said);
          assertFalse(source.equals(wave.through()) && said.contains(source), said);
        }
        String said = note(Cause.Code.PEAK_BELOW_RMS, english, Language.ENGLISH);
        assertEquals(english.replace("peak-", "peak "), said);
      }
    }
  }

  /** The words are those that arithmetic really throws. */
  @Test
  void whyAFormulaHasNoValueIsSaidInTheLanguage() {
    Map<String, Executable> wrong =
        Map.of(
            "page.byZero", () -> Rational.ONE.over(Rational.ZERO),
            "page.rootOfNone", () -> Real.of(Rational.of(-1)).sqrt());
    for (Language language : OTHERS) {
      wrong.forEach(
          (key, calculation) -> {
            String thrown = assertThrows(ArithmeticException.class, calculation).getMessage();
            assertEquals(language.of(key), note(Cause.Code.NOT_CALCULABLE, thrown, language));
            assertNotEquals(thrown, language.of(key));
          });
      String none =
          assertThrows(
                  ArithmeticException.class,
                  () ->
                      Gradient.at(
                          Objects.requireNonNull(new WrittenFormula("power").tree()), Map.of()))
              .getMessage();
      String said = note(Cause.Code.NOT_CALCULABLE, none, language);
      assertFalse(said.contains("has no value") || said.contains("power"), said);
    }
  }

  @Test
  void attemptsAreSaidInTheLanguage() {
    String english = "current of attempt 1, peak-voltage of attempt 2";
    for (Language language : OTHERS) {
      String said = note(Cause.Code.ATTEMPTS_DIFFER, english, language);
      assertFalse(said.contains("attempt ") || said.contains("peak-"), said);
      assertTrue(said.contains("1") && said.contains("2"), said);
    }
  }

  @Test
  void noItemSaysItsPlaceTwice() {
    int places = 0;
    for (Plan plan : Sheets.demo()) {
      ItemList list = Evidence.of(plan).list();
      for (Item item : list.items()) {
        String place = item.head().place();
        places += place.isEmpty() ? 0 : 1;
        String title = item.head().title();
        assertFalse(
            !place.isEmpty() && title.matches("(?s)\\Q" + place + "\\E *:.*"),
            place + ": " + title);
      }
    }
    assertTrue(places > 100, places + " places");
  }
}
