package passband.testing;

import java.util.LinkedHashMap;
import java.util.Map;

/** Texts of up to 64 KiB that a parser or planner finds hardest, by what they are. */
public final class HardInputs {
  private static final String TEST =
      "test t \"T\" {\n outlet bip\n setup bipolar\n accept power at most %s\n"
          + " table {\n mode | setting/W | load/ohm\n %s }\n}\n";
  private static final String ROW = "thin | 20 | 100\n";

  /** All of them. */
  public static final Map<String, String> TEXTS = texts();

  private HardInputs() {}

  private static Map<String, String> texts() {
    Map<String, String> texts = new LinkedHashMap<>();
    words(texts);
    declarations(texts);
    expressions(texts);
    tables(texts);
    return texts;
  }

  private static void words(Map<String, String> texts) {
    texts.put("opening braces", "{".repeat(65_000));
    texts.put("closing braces", "}".repeat(65_000));
    texts.put("quotes", "\"".repeat(65_000));
    texts.put("comment signs", "# ".repeat(32_000));
    texts.put("numbers and commas", "1,".repeat(32_000));
    texts.put("names and dots", "a.".repeat(32_000));
    texts.put("surrogates", "\uD83D\uDE00".repeat(16_000));
    texts.put("letters outside ASCII", "\u00e9\u00b1 ".repeat(13_000));
  }

  private static void declarations(Map<String, String> texts) {
    texts.put("procedures in procedures", "procedure p {\n".repeat(4_500));
    texts.put("tests in tests", "test t {\n".repeat(6_000));
    texts.put("uses", "use \"x.pband\"\n".repeat(4_500));
    texts.put("outlets", "device d {\n" + "outlet o, ".repeat(6_000) + "\n}\n");
    texts.put("modes", "device d {\n" + "mode m on o {\n}\n".repeat(3_500) + "}\n");
    texts.put("leads", "leads l {\n" + "lead a, rated 1 kV\n".repeat(3_300) + "}\n");
    texts.put(
        "unknown placeholders",
        Examples.framed("test", "section s \"S\" {\n" + "do \"{x}\"\n".repeat(7_000) + "}\n"));
    texts.put("allows", Examples.framed("test", "allow x because \"y\"\n".repeat(2_900)));
  }

  private static void expressions(Map<String, String> texts) {
    texts.put("brackets", test("(".repeat(20_000) + "1 W" + ")".repeat(20_000), ROW));
    texts.put("a long sum", test("1 W" + " + 1 W".repeat(9_000), ROW));
    texts.put("a long exponent", test("1e" + "9".repeat(60_000) + " W", ROW));
    texts.put("roots of roots", test("sqrt(".repeat(90) + "1 W" + ")".repeat(90), ROW));
    texts.put("powers of a setting", test("setting ^ 9 ^ 9 ^ 9", ROW));
    texts.put("a large power", test("2 ^ 99999999 * 1 W", ROW));
  }

  private static void tables(Map<String, String> texts) {
    texts.put("rows", test("30 W", ROW.repeat(3_500)));
    texts.put("values of a cell", test("30 W", "thin | " + "20, ".repeat(15_000) + "20 | 100\n"));
    texts.put("two thin spans", test("30 W", "thin | 1 to 20 step 0.0001 | 50 to 500 step 0.01\n"));
    texts.put("a huge span", test("30 W", "thin | 1 to 1e60 step 1e-60 | 100\n"));
    texts.put("cells of a row", test("30 W", "| ".repeat(30_000) + "\n"));
  }

  private static String test(String limit, String rows) {
    return Examples.framed("test", TEST.formatted(limit, rows));
  }
}
