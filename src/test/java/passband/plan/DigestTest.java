package passband.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.testing.Repository;
import passband.testing.Snippet;

/**
 * The digest stands for the meaning: what a technician would do or read differently changes it, how
 * it is written does not.
 */
class DigestTest {
  private static final String MAIN = "teasel/teasel-output.pband";

  private static Map<String, String> library() {
    return Repository.texts(Repository.LIBRARY);
  }

  private static String digest(Map<String, String> files) {
    return Snippet.compile(files, MAIN, null).plan().digest();
  }

  private static String changed(String from, String to) {
    Map<String, String> files = library();
    boolean[] found = {false};
    files.replaceAll(
        (name, text) -> {
          found[0] |= text.contains(from);
          return text.replace(from, to);
        });
    assertEquals(true, found[0], from);
    return digest(files);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "`# What the tests compile and change.`|`# Another comment.`",
        "`      slit  | 20 W, 70 W, 140 W | 400 ohm`|`      slit | 0.02 kW,70 W ,140 W|0.4 kohm # rows`",
        "`setting  power 1 W to 140 W step 1 W`|`setting power 1 W to 0.140 kW step 1e0 W`",
        "`peak-voltage at most 3800 V`|`peak-voltage at most 3.8 kV`",
        "`      thick | 5, 30, 60 | 125      |\n`|`      thick | 5, 30 | 125 |\n      thick | 60 | 125 |\n`"
      })
  void theWritingIsNoMatter(String from, String to) {
    assertEquals(digest(library()), changed(from.replace("\\n", "\n"), to.replace("\\n", "\n")));
  }

  @Test
  void theSplitIntoFilesIsNoMatter() {
    StringBuilder one = new StringBuilder();
    Map<String, String> files = library();
    for (String name :
        new String[] {"teasel/teasel.pband", "analyzers/shale.pband", "leads.pband", MAIN}) {
      files
          .get(name)
          .lines()
          .filter(l -> !l.startsWith("use "))
          .forEach(l -> one.append(l).append('\n'));
    }
    assertEquals(digest(library()), Snippet.compile(one.toString()).plan().digest());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "`confirm \"The mains cord, plug and case are undamaged.\"`|`confirm \"The mains cord and case are undamaged.\"`",
        "`  caution flammables \"No flammable gas, liquid or dressing within reach of the output.\"`|``",
        "`connect key   from outlet.switch to analyzer.cut-key`|`connect key   from outlet.switch to analyzer.coag-key`",
        "`369 to 428`|`370 to 428`",
        "`within 15 % of setting or 1 W`|`within 15 % of setting or 1.001 W`",
        "`duty     5 s on, 20 s off`|`duty     5 s on, 15 s off`",
        "`error      1 % of reading + 0.3 mA`|`error      1.1 % of reading + 0.3 mA`",
        "`error      1 % of reading + 0.3 mA`|`error      1 % of reading + 0.3 mA as triangular`",
        "`error      1 % of reading + 0.3 mA`|`error      1 % of reading + 0.3 mA as normal coverage 2`",
        "`error      1 % of reading + 0.3 mA`|`error      1 % of reading + 0.3 mA degrees-of-freedom 9`",
        "`rated 6 kV, colour black`|`rated 5 kV, colour black`",
        "`leave \"Leave the service page, then switch the generator off and on again.\"`|`leave \"Leave the service page.\"`",
        "`decision simple`|`decision guarded`",
        "`revision \"B\" on 2026-10-02`|`revision \"C\" on 2026-10-02`",
        "`range 0.4 A to 3 A`|`range 0.4 A to 2 A`",
        "`\"KEY 1\"`|`\"KEY A\"`",
        "`on-time 3 s`|`on-time 4 s`"
      })
  void anyChangeOfMeaningIs(String from, String to) {
    assertNotEquals(digest(library()), changed(from, to));
  }
}
