package passband.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import passband.diagnostic.TextReport;
import passband.evidence.BadInput;
import passband.evidence.Evidence;
import passband.evidence.ItemList;
import passband.evidence.LimitsReader;
import passband.evidence.LimitsWriter;
import passband.evidence.Seal;
import passband.judge.Judge;
import passband.judge.Readings;
import passband.judge.Report;
import passband.plan.Plan;
import passband.render.Checklist;
import passband.render.JudgeReport;
import passband.testing.Examples;
import passband.testing.Records;
import passband.testing.Repository;

/**
 * Ten thousand good inputs, each with one slip of the hand: a byte, a word, a number, a line. What
 * comes of it is a result or a message; the seed is fixed, and a failure names its number.
 */
class MutationsTest {
  private static final Pattern WORD = Pattern.compile("[\\p{L}\\p{N}_.-]+|[^\\s\\p{L}\\p{N}]");
  private static final List<String> NUMBERS =
      List.of(
          "0",
          "-1",
          "0.0",
          "1e999",
          "1e-999",
          "99999999999999999999",
          "0.00000000000000000001",
          "-0",
          "1/0",
          "NaN",
          "",
          "½",
          "1,5",
          "1e5",
          "180",
          "2147483648",
          "٣");
  private static final List<String> OPERATORS =
      List.of("/ 0", "- 1", "* 0", "/ (1 - 1)", "+", "(", ")", "log", "sqrt", "{", "}", "\"", "|");

  private final Random random = new Random(20261127);

  private String mutated(String text, List<String> words) {
    return switch (random.nextInt(7)) {
      case 0 -> oneByte(text);
      case 1 -> atWord(text, "");
      case 2 -> atWord(text, words.get(random.nextInt(words.size())));
      case 3 -> atNumber(text, NUMBERS.get(random.nextInt(NUMBERS.size())));
      case 4 -> atNumber(text, "$0 " + OPERATORS.get(random.nextInt(OPERATORS.size())));
      default -> atLine(text, random.nextInt(4));
    };
  }

  private String oneByte(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
    return new String(bytes, StandardCharsets.UTF_8);
  }

  private String atWord(String text, String other) {
    return replaced(text, WORD, Matcher.quoteReplacement(other));
  }

  private String atNumber(String text, String other) {
    return replaced(text, Pattern.compile("\\d+(\\.\\d+)?"), other);
  }

  private String replaced(String text, Pattern pattern, String other) {
    Matcher matcher = pattern.matcher(text);
    if (!matcher.find(random.nextInt(text.length())) && !matcher.find(0)) {
      return text + other;
    }
    StringBuilder out = new StringBuilder(text.substring(0, matcher.start()));
    out.append(pattern.matcher(matcher.group()).replaceFirst(other));
    return out.append(text.substring(matcher.end())).toString();
  }

  private String atLine(String text, int what) {
    List<String> lines = new ArrayList<>(List.of(text.split("\n")));
    int at = random.nextInt(lines.size());
    int other = random.nextInt(lines.size());
    switch (what) {
      case 0 -> lines.remove(at);
      case 1 -> lines.add(other, lines.get(at));
      case 2 -> lines.set(other, lines.set(at, lines.get(other)));
      default -> lines.set(at, lines.get(at).substring(0, lines.get(at).length() / 2));
    }
    return String.join("\n", lines) + "\n";
  }

  private static List<String> words(List<String> texts) {
    List<String> words = new ArrayList<>();
    for (String text : texts) {
      WORD.matcher(text).results().forEach(r -> words.add(r.group()));
    }
    return words;
  }

  private interface Use {
    String said(String input) throws Exception;
  }

  private void each(int times, List<String> inputs, Use use) {
    List<String> words = words(inputs);
    for (int i = 0; i < times; i++) {
      String input = mutated(inputs.get(i % inputs.size()), words);
      try {
        String said = use.said(input);
        assertFalse(said.contains("Exception") || said.contains("at passband."), said);
      } catch (Exception | Error e) {
        throw new AssertionError("number " + i + ":\n" + input, e);
      }
    }
  }

  // ---- sources ----

  @Test
  void sources() {
    List<String> texts = new ArrayList<>();
    for (Path file :
        Repository.files(Repository.ROOT.resolve("src/test/resources/cases"), ".pband")) {
      if (Repository.bytes(file).length < 3000) {
        texts.add(new String(Repository.bytes(file), StandardCharsets.UTF_8));
      }
    }
    assertTrue(texts.size() > 100);
    each(2000, texts, MutationsTest::compiled);
  }

  private static String compiled(String source) {
    var snippet = Examples.compile(source.getBytes(StandardCharsets.UTF_8));
    boolean clean = snippet.diagnostics().stream().noneMatch(d -> !d.code().allowable());
    if (clean) {
      for (Plan plan : snippet.plans()) {
        LimitsWriter.of(Evidence.of(plan).list());
        if (source.hashCode() % 8 == 0) {
          Checklist.of(plan);
        }
      }
    }
    return TextReport.of(snippet.diagnostics());
  }

  // ---- limits ----

  private static final String READ = "accept power from output, read as current\n";
  private static final String DERIVED =
      """
      derive through "Power" = voltage * current, resolution 0.1 W
      accept through from 1 W to 50 W
      """;
  private static final String ROWS =
      "table {\nmode | setting/W | load/ohm\nthin | 20 | 100\nthin | 40 | 100\n}\n";

  /** Limits of short procedures, one of them with a derived value. */
  private static List<String> limits() {
    List<String> limits = new ArrayList<>();
    for (String accepted : List.of(READ, DERIVED)) {
      String test = "test t \"T\" {\noutlet bip\nsetup bipolar\n" + accepted + ROWS + "}\n";
      String framed = Examples.framed("test", test);
      var snippet = Examples.compile(framed.getBytes(StandardCharsets.UTF_8));
      assertEquals(1, snippet.plans().size(), snippet.report());
      limits.add(LimitsWriter.of(Evidence.of(snippet.plan()).list()));
    }
    return limits;
  }

  /** The seal is put right again, or nothing of what is behind it would be looked at. */
  private static String sealed(String text) {
    return Seal.sealed(
        text.replaceFirst("\"seal\": \"[0-9a-f]{64}\"", "\"seal\": \"" + Seal.OPEN + "\""));
  }

  @Test
  void limitsFiles() throws BadInput {
    List<String> texts = limits();
    String csv = Records.of(LimitsReader.read(texts.get(0)), false).csv();
    each(
        3000,
        texts,
        text -> {
          try {
            return judged(LimitsReader.read(sealed(text)), csv);
          } catch (BadInput e) {
            assertFalse(e.getMessage().isBlank());
            return e.getMessage();
          }
        });
  }

  private static String judged(ItemList list, String csv) {
    try {
      Report report =
          Judge.judge(list, Readings.parse(csv.getBytes(StandardCharsets.UTF_8)), "2026-10-02");
      return csv.hashCode() % 4 == 0 ? JudgeReport.text(report) : report.overall().toString();
    } catch (BadInput e) {
      return e.getMessage();
    }
  }

  // ---- readings ----

  @Test
  void readings() throws BadInput {
    ItemList list = LimitsReader.read(limits().get(0));
    List<String> texts =
        List.of(Records.of(list, false).csv(), Records.of(list, true).csv().replace(',', ';'));
    each(5000, texts, text -> judged(list, text));
  }
}
