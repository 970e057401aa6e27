package passband.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.TextReport;
import passband.testing.Repository;
import passband.testing.Snippet;

/**
 * One cause, few messages: any one number of a device, an analyzer or leads, ten times too large or
 * too small, is said in at most three messages, however many points it reaches.
 */
class CascadeTest {
  private static final int MOST = 3;
  private static final Pattern PROCEDURE = Pattern.compile("(?m)^procedure ");
  private static final Pattern NUMBER =
      Pattern.compile("(?<![\\w.\"-])(\\d+(?:\\.\\d+)?)(?=\\s|$)");

  static List<Path> libraries() {
    return List.of(Repository.PROCEDURES, Repository.LIBRARY);
  }

  @ParameterizedTest
  @MethodSource("libraries")
  void aWrongNumberOfAProfileIsSaidInFewMessages(Path folder) {
    Map<String, String> texts = Repository.texts(folder);
    assertEquals(List.of(), found(texts));
    List<String> cascades = new ArrayList<>();
    int tried = 0;
    for (Map.Entry<String, String> file : texts.entrySet()) {
      if (!isProfile(file.getKey(), file.getValue())) {
        continue;
      }
      for (String wrong : wrong(file.getValue())) {
        Map<String, String> changed = new HashMap<>(texts);
        changed.put(file.getKey(), wrong);
        List<Diagnostic> found = found(changed);
        tried++;
        if (found.size() > MOST) {
          cascades.add(found.size() + "\n" + TextReport.of(found));
        }
      }
    }
    assertTrue(tried > 50, "only " + tried);
    assertEquals("", String.join("\n----\n", cascades), cascades.size() + " of " + tried);
  }

  private static boolean isProfile(String path, String text) {
    return path.endsWith(".pband")
        && !Pattern.compile("(?m)^(procedure|rule) ").matcher(text).find();
  }

  /** The text with one number ten times as large, or a tenth: once for each and each way. */
  private static List<String> wrong(String text) {
    List<String> all = new ArrayList<>();
    int start = 0;
    for (String line : text.split("(?<=\n)")) {
      Matcher number = NUMBER.matcher(written(line));
      while (number.find()) {
        for (int shift : new int[] {1, -1}) {
          String other =
              new java.math.BigDecimal(number.group(1))
                  .scaleByPowerOfTen(shift)
                  .stripTrailingZeros()
                  .toPlainString();
          all.add(
              text.substring(0, start + number.start(1))
                  + other
                  + text.substring(start + number.end(1)));
        }
      }
      start += line.length();
    }
    return all;
  }

  /** The line with its texts and its comment blanked out. */
  private static String written(String line) {
    Matcher said = Pattern.compile("\"[^\"]*\"|#.*").matcher(line);
    return said.replaceAll(part -> "_".repeat(part.group().length()));
  }

  /** What all procedures of the library together have. */
  private static List<Diagnostic> found(Map<String, String> texts) {
    StringBuilder uses = new StringBuilder();
    for (Map.Entry<String, String> file : texts.entrySet()) {
      if (PROCEDURE.matcher(file.getValue()).find()) {
        uses.append("use \"").append(file.getKey()).append("\"\n");
      }
    }
    Map<String, String> all = new HashMap<>(texts);
    all.put("all.pband", uses.toString());
    return Snippet.compile(all, "all.pband", null).diagnostics();
  }
}
