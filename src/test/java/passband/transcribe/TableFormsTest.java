package passband.transcribe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import passband.diagnostic.Diagnostic;
import passband.testing.Snippet;

/** A table is the same table in whichever form a manual prints it and a spreadsheet saves it. */
class TableFormsTest {
  private static Transcript transcript(String csv) throws TableFault {
    return transcript(csv, false);
  }

  /** Every draft compiles, and the reasons why something may stand in it are used. */
  private static Transcript transcript(String csv, boolean comma) throws TableFault {
    Transcript one =
        Transcript.of(
            csv.getBytes(StandardCharsets.UTF_8), comma, "Tabelle für x", "Tabelle", "2026-01-01");
    List<Diagnostic> said = Snippet.compile(one.source()).diagnostics();
    for (Diagnostic each : said) {
      assertTrue(!each.isError(), each.toString());
      assertTrue(!each.code().id().equals("allow-unused"), each.toString());
    }
    assertTrue(one.source().contains("procedure tabelle-fuer-x-output "), one.source());
    return one;
  }

  private static void says(Transcript one, String... sentences) {
    for (String sentence : sentences) {
      assertTrue(one.text().contains(sentence), sentence + "\n" + one.text());
      assertTrue(one.source().contains(sentence), sentence + "\n" + one.source());
    }
  }

  // ---- the law ----

  private static final List<String> HEADINGS =
      List.of(
          "Mode,Power (W),Load (ohm),Limits (mA)",
          "Function,Output power /W,R load / Ω,Current [mA]",
          "Betriebsart,HF-Leistung (Watt),Lastwiderstand (Ω),Ausgangsstrom / mA",
          "Mode,Setting in W,R_L (\u2126),Range in mA",
          "Mode de fonction,Puissance (W),Charge (Ohm),Limites (mA)");

  private static final List<String> BETWEEN =
      List.of(" - ", "–", " to ", "...", " … ", "-", " bis ", " à ");

  /** Generated tables in every language, separator, charset and way of naming modes. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4})
  void aFormMakesNoDifference(int modes) throws TableFault {
    for (int seed = 0; seed < 40; seed++) {
      ManualTables made = ofCurrents(new Random(seed), modes);
      Random form = new Random(seed);
      boolean comma = form.nextBoolean();
      String separator = List.of(";", "\t", comma ? ";" : ",").get(form.nextInt(3));
      Charset charset =
          List.of(StandardCharsets.UTF_8, StandardCharsets.UTF_16).get(form.nextInt(2));
      String csv = form(made, form, separator);
      ManualTable plain = TableReader.read(made.csv().getBytes(StandardCharsets.UTF_8), false);
      ManualTable other = TableReader.read(("\ufeff" + csv).getBytes(charset), comma);
      assertEquals(values(plain), values(other), csv);
      assertEquals(plain.set(), other.set(), csv);
      assertEquals(plain.read(), other.read(), csv);
    }
  }

  private static ManualTables ofCurrents(Random random, int modes) {
    ManualTables made = ManualTables.of(random, modes, 12, 1);
    while (made.read != 0) {
      made = ManualTables.of(random, modes, 12, 1);
    }
    return made;
  }

  /** Mode names in each row, in the first of each, or on a line of their own. */
  private static String form(ManualTables made, Random form, String separator) {
    int naming = form.nextInt(3);
    String between = BETWEEN.get(form.nextInt(BETWEEN.size()));
    StringBuilder csv = new StringBuilder(form.nextBoolean() ? "Table 3: output" : "");
    csv.append(csv.isEmpty() ? "" : separator.repeat(3) + "\n");
    csv.append(HEADINGS.get(form.nextInt(HEADINGS.size())).replace(",", separator) + "\r\n");
    int last = -1;
    for (ManualTables.Row row : made.rows) {
      String name = "Mode " + (row.mode + 1);
      if (naming == 2 && row.mode != last) {
        csv.append(name + separator.repeat(3) + "\r\n");
      }
      csv.append(naming == 0 || naming == 1 && row.mode != last ? name : "").append(separator);
      csv.append(row.setting).append(form.nextBoolean() ? " W" : "").append(separator);
      csv.append(row.printedLoad).append(form.nextBoolean() ? "\u00a0Ω" : "").append(separator);
      csv.append(row.printedLower + between + row.printedUpper);
      csv.append(form.nextBoolean() ? " mA\r\n" : "\r\n");
      last = row.mode;
    }
    return csv.toString();
  }

  private static List<List<Object>> values(ManualTable table) {
    List<List<Object>> values = new ArrayList<>();
    for (ManualRow row : table.rows()) {
      values.add(
          List.of(
              table.title(row.mode()),
              row.point(),
              row.lower().value(),
              row.lower().step(),
              row.upper().value(),
              row.upper().step()));
    }
    return values;
  }

  // ---- columns beside the limits ----

  @Test
  void otherColumnsAreComparedWithTheLimits() throws TableFault {
    Transcript one =
        transcript(
            """
            Mode,Output power (Watts),Load R (Ω),Nominal current (mA),Tolerance %,Limits (mA)
            Cut,10,100,316,10,284 - 348
            Cut,20,100,447,10,402 - 492
            Cut,40,100,632,10,569 - 695
            Cut,60,100,775,15,698 - 853
            Cut,80,100,849,10,764 - 934
            """);
    says(
        one,
        "Line 5 (Cut, 60 W, 100 ohm): the table says a tolerance of 15 %; however rounded, that does"
            + " not make its limits, 698 to 853 mA.",
        "Line 6 (Cut, 80 W, 100 ohm): the table prints the nominal value 849 mA; the setting and the"
            + " load give 894 mA.");
    assertTrue(one.source().contains("accept current within 10 % of target"), one.source());
  }

  @Test
  void nominalValuesWithTolerancesAreLimits() throws TableFault {
    Transcript one =
        transcript(
            """
            Mode;Power setting (W);Load (Ω);Nominal current (mA);Tolerance
            Cut;10;100;316;±10 %
            Cut;20;100;447;+/-10 %
            Cut;40;100;632;10 %
            Coag;10,5;500;145;±15 %
            Coag;20;500;200;±15 %
            Coag;40;500;283;±15 %
            """,
            true);
    says(one, "The table prints no limits");
    assertTrue(one.source().contains("accept current within 10 % of target"), one.source());
    assertTrue(one.source().contains("accept current within 15 % of target"), one.source());
  }

  @Test
  void aToleranceThatCannotBeReadIsSaidWhereThereAreLimits() throws TableFault {
    says(
        transcript(
            """
            Mode,Power/W,Load/ohm,Tolerance,Limits/mA
            Cut,10,100,+10/-15 %,291 - 339
            """),
        "Line 2: its tolerance, '+10/-15 %', is not one that can be read");
  }

  // ---- one side ----

  @Test
  void peakVoltagesHaveAnUpperLimitAlone() throws TableFault {
    Transcript one =
        transcript(
            """
            Mode;Power (W);Load (ohm);Max. peak voltage (V)
            Cut;10;100;450
            Cut;50;100;800
            Spray;30;500;3200
            """);
    says(one, "The table has no lower limits of some modes");
    for (String line :
        List.of(
            "peak-voltage at most 800 V",
            "peak-voltage at most 3200 V",
            "accept peak-voltage from stated",
            "| at most 450",
            "allow    mode-untested because")) {
      assertTrue(one.source().contains(line), line + "\n" + one.source());
    }
  }

  @Test
  void leakageIsReadToEarth() throws TableFault {
    Transcript one =
        transcript(
            """
            Outlet,Mode,Setting (W),Load (ohm),HF leakage (mA)
            Monopolar,Cut,300,200,≤150
            Monopolar,Coag,120,200,max. 150 mA
            Bipolar,Bipolar,70,200,69 mA maximum
            """);
    for (String line :
        List.of(
            "measure hf-leakage from high to low through 200 ohm",
            "accept hf-leakage from stated",
            "from device.protective-earth.terminal to analyzer.low",
            "| at most 69")) {
      assertTrue(one.source().contains(line), line + "\n" + one.source());
    }
  }

  /**
   * Loads that can be no meter's own resistance are the modes': the draft compiles all the same.
   */
  @ParameterizedTest
  @CsvSource({"200, 200 ohm", "190, 190 ohm", "400, 200 ohm", "50, 200 ohm", "2000, 200 ohm"})
  void leakageIsReadThroughAMetersResistance(String load, String meter) throws TableFault {
    Transcript found =
        transcript(
            """
            Mode,Setting (W),Load (ohm),HF leakage (mA)
            Cut,300,%s,max 150
            Cut,100,%s,max 150
            Coag,120,%s,max 150
            """
                .formatted(load, load, load));
    assertTrue(found.source().contains("low through " + meter + " {"), found.source());
    says(found, "its meter has " + meter + ": that is a guess.");
    String aside = "The table's load, " + load + " ohm, is no meter's";
    assertEquals(!meter.equals(load + " ohm"), found.text().contains(aside), found.text());
  }

  @Test
  void aModeWithLimitsOnOneSideInSomeRowsKeepsWhatIsStated() throws TableFault {
    Transcript one =
        transcript(
            """
            Mode,Power/W,Load/ohm,Limits/mA
            Soft,10,100,291 to 339
            Soft,20,100,at least 412
            Soft,40,100,mind. 583
            Soft,60,100,≥ 714
            """);
    assertTrue(one.source().contains("| at least 412"), one.source());
    assertTrue(one.source().contains("accept current from stated"), one.source());
  }

  // ---- outlets and names ----

  @Test
  void outletsAndModesKeepTheirTitles() throws TableFault {
    Transcript one =
        transcript(
            """
            "Ausgang";"Betriebsart";"Leistung (W)";"Last (Ω)";"Strom (mA)"
            "Monopolar „oben“";"Schneiden";"10";"100";"291–339"
            ;;"20";"100";"412–479"
            ;;"40";"100";"583–678"
            "Bipolar/Fuß";"Schneiden";"10";"100";"291–339"
            ;"2";"20,5";"100";"417–485"
            ;"高周波";"40";"100";"583–678"
            ;"Spu\u0308lung";"80";"100";"824–959"
            """,
            true);
    for (String line :
        List.of(
            "outlet monopolar-oben \"Monopolar „oben“\"",
            "outlet bipolar-fuss \"Bipolar/Fuß\"",
            "mode schneiden-monopolar-oben \"Schneiden (Monopolar „oben“)\" on monopolar-oben {",
            "mode schneiden-bipolar-fuss \"Schneiden (Bipolar/Fuß)\" on bipolar-fuss {",
            "mode mode-2 \"2\" on bipolar-fuss {",
            "mode mode \"高周波\" on bipolar-fuss {",
            "mode spuelung \"Spülung\" on bipolar-fuss {")) {
      assertTrue(one.source().contains(line), line + "\n" + one.source());
    }
  }

  /**
   * Rows of several outlets are rows of each, however the manual joins their names, and that is
   * said.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "Mono A, Mono B",
        "Mono A; Mono B",
        "Mono A & Mono B",
        "Mono A + Mono B",
        "Mono A and Mono B",
        "Mono A und Mono B",
        "Mono A et Mono B",
        "Mono A, B",
        "Mono A and B",
        "Mono A/B"
      })
  void rowsOfSeveralOutletsAreOfEach(String cell) throws TableFault {
    Transcript one = transcript(ofOutlet(cell));
    for (String line :
        List.of(
            "outlet mono-a \"Mono A\" {",
            "outlet mono-b \"Mono B\" {",
            "mode cut \"Cut\" on mono-a, mono-b {",
            "    outlet mono-a, mono-b\n")) {
      assertTrue(one.source().contains(line), line + "\n" + one.source());
    }
    says(
        one, "'" + cell + "' was taken as 2 outlets, each with all of these rows: Mono A; Mono B.");
  }

  @ParameterizedTest
  @ValueSource(strings = {"Bipolar/Foot", "HF+", "Bipolar (hand)", "Band", "Mono-A"})
  void oneOutletStaysOne(String cell) throws TableFault {
    Transcript one = transcript(ofOutlet(cell));
    assertTrue(one.source().contains(" \"" + cell + "\" {"), one.source());
    assertEquals(1, one.source().split("  outlet [^\n]*\\{", -1).length - 1, one.source());
  }

  private static String ofOutlet(String cell) {
    return "Outlet,Mode,Power (W),Load (ohm),Current (mA)\n"
        + "\""
        + cell
        + "\",Cut,10,100,291 - 339\n"
        + ",,20,100,412 - 479\n"
        + ",,40,100,583 - 678\n";
  }

  /** A line of its own with an outlet's name, or a mode's, and words that are neither. */
  @Test
  void linesBetweenTheRowsAreTakenForWhatTheyMayBeAndSaid() throws TableFault {
    says(
        transcript(
            """
            Table 5-2: Output,,,
            Mode,Setting,Load,Current
            MONOPOLAR,,,
            Cut,10 W,100 Ω,291 – 339 mA
            Coag,20 W,100 Ω,412 – 479 mA
            Soft,,,
            ,40 W,100 Ω,583 – 678 mA
            * into the reference load,,,
            """),
        "Line 1 is not of the table: 'Table 5-2: Output'.",
        "Line 3 was taken as the outlet of the lines below it: 'MONOPOLAR'.",
        "Line 6 was taken as the mode of the lines below it: 'Soft'.",
        "Line 8 is not of the table: '* into the reference load'.");
  }
}
