package passband.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import passband.evidence.Evidence;
import passband.quantity.Rational;
import passband.quantity.Student;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.render.Checklist;
import passband.testing.Sheets;

/**
 * The page sends its tables in short forms: what its script makes of them is what the judge has.
 */
class TablesBrowserTest {
  @TempDir static Path folder;
  private static Browser browser;

  @BeforeAll
  static void open() throws IOException {
    browser = new Browser(folder, true);
    Path page = folder.resolve("page.html");
    Files.writeString(page, Checklist.of(Sheets.SPREADS));
    browser.open(page);
  }

  @AfterAll
  static void close() {
    browser.close();
  }

  private static String factor(JsonArray ratio) {
    return ratio.get(0).getAsString() + "/" + ratio.get(1).getAsString();
  }

  private static String factor(Rational factor) {
    String text = factor.toString();
    return text.contains("/") ? text : text + "/1";
  }

  private static String of(String factor, String exponents) {
    return factor + " " + exponents.replace(" ", "");
  }

  @Test
  void theScriptKnowsTheUnitsOfTheJudgeAndNoOthers() {
    TreeMap<String, String> expected = new TreeMap<>();
    Units.recordedNames().forEach((name, unit) -> expected.put(name, said(unit)));
    JsonObject found =
        JsonParser.parseString(
                (String)
                    browser.run(
                        "return JSON.stringify(Object.fromEntries(Units.names),"
                            + " (_, v) => typeof v === 'bigint' ? String(v) : v)"))
            .getAsJsonObject();
    TreeMap<String, String> units = new TreeMap<>();
    found
        .asMap()
        .forEach(
            (name, unit) -> {
              JsonObject one = unit.getAsJsonObject();
              units.put(
                  name,
                  of(
                      factor(one.getAsJsonArray("factor")),
                      one.getAsJsonArray("dimension").toString()));
            });
    assertEquals(expected, units);
  }

  private static String said(Unit unit) {
    return of(factor(unit.factor()), Arrays.toString(unit.dimension().exponents()));
  }

  @Test
  void theScriptHasTheGuardOfEachNumberOfDegreesOfFreedom() {
    Rational normal = Rational.of(Evidence.of(Sheets.SPREADS).list().decision().guard());
    JsonArray guards =
        JsonParser.parseString(
                (String)
                    browser.run("return JSON.stringify(Derived.guards.map(g => g.map(String)))"))
            .getAsJsonArray();
    assertEquals(Student.MOST, guards.size());
    for (int freedom = 1; freedom <= Student.MOST; freedom++) {
      JsonArray ratio = guards.get(freedom - 1).getAsJsonArray();
      Rational guard =
          Rational.parse(ratio.get(0).getAsString())
              .over(Rational.parse(ratio.get(1).getAsString()));
      assertEquals(Student.factor(normal, freedom), guard, "of " + freedom);
    }
  }
}
