package passband.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import passband.plan.Plan;
import passband.testing.Sheets;

/** {@code limits.json}: what is written is read back, and a damaged file is refused. */
class LimitsFileTest {
  private static final int DAMAGES = 300;

  static List<Plan> plans() {
    return List.of(Sheets.YARROW, Sheets.TEASEL);
  }

  @ParameterizedTest
  @MethodSource("plans")
  void whatIsWrittenIsReadBack(Plan plan) throws BadInput {
    ItemList list = Evidence.of(plan).list();
    assertEquals(list, LimitsReader.read(LimitsWriter.of(list)));
    assertEquals(list, LimitsReader.read(LimitsWriter.of(list).replace("\n", "\r\n")));
  }

  @ParameterizedTest
  @MethodSource("plans")
  void everyItemHasAnIdentityOfItsOwn(Plan plan) {
    Set<String> ids = new HashSet<>();
    List<Item> items = Evidence.of(plan).list().items();
    items.forEach(item -> assertTrue(ids.add(item.id()), item.id()));
    assertTrue(items.size() > plan.limits().size());
  }

  @Test
  void anyChangedCharacterIsRefused() {
    String good = LimitsWriter.of(Evidence.of(plans().get(0)).list());
    Random random = new Random(11);
    for (int i = 0; i < DAMAGES; i++) {
      int at = random.nextInt(good.length());
      char c = good.charAt(at) == '7' ? '8' : '7';
      String bad = good.substring(0, at) + c + good.substring(at + 1);
      assertThrows(BadInput.class, () -> LimitsReader.read(bad), bad.substring(0, at));
    }
  }

  @Test
  void anyMissingLineIsRefused() {
    String good = LimitsWriter.of(Evidence.of(plans().get(0)).list());
    String[] lines = good.split("\n");
    Random random = new Random(12);
    for (int i = 0; i < DAMAGES; i++) {
      int gone = random.nextInt(lines.length);
      StringBuilder bad = new StringBuilder();
      for (int line = 0; line < lines.length; line++) {
        bad.append(line == gone ? "" : lines[line] + "\n");
      }
      assertThrows(BadInput.class, () -> LimitsReader.read(bad.toString()), lines[gone]);
    }
  }

  /** What is said names the place. */
  @Test
  void aFaultNamesItsPlace() {
    String good = LimitsWriter.of(Evidence.of(plans().get(0)).list());
    BadInput typed =
        assertThrows(
            BadInput.class,
            () ->
                LimitsReader.read(
                    good.replaceFirst("\"coverage_factor\": 2", "\"coverage_factor\": \"2\"")));
    assertEquals("decision.coverage_factor: expected a number", typed.getMessage());
    BadInput sealed =
        assertThrows(BadInput.class, () -> LimitsReader.read(good.replaceFirst("Done by", "Done")));
    assertEquals("its seal is broken: it was changed after it was written", sealed.getMessage());
  }
}
