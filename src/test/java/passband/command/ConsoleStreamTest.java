package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import passband.testing.Repository;

/** Text on consoles that are not UTF-8's. */
class ConsoleStreamTest {
  private static String shown(String text, String charset, int piece) throws IOException {
    ByteArrayOutputStream console = new ByteArrayOutputStream();
    ConsoleStream stream = new ConsoleStream(console, Charset.forName(charset));
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    for (int at = 0; at < bytes.length; at += piece) {
      stream.write(bytes, at, Math.min(piece, bytes.length - at));
    }
    stream.flush();
    return console.toString(Charset.forName(charset));
  }

  @ParameterizedTest
  @CsvSource({
    "IBM437, -20.6 % of 350 Ω ≤ 5 ... Prüfung",
    "IBM850, -20.6 % of 350 ohm <= 5 ... Prüfung",
    "windows-1252, -20.6 % of 350 ohm <= 5 … Prüfung",
    "US-ASCII, -20.6 % of 350 ohm <= 5 ... Pr?fung"
  })
  void whatAConsoleLacksIsWrittenInWhatItHas(String charset, String expected) throws IOException {
    for (int piece : List.of(1, 2, 3, 7, 5000)) {
      assertEquals(expected, shown("−20.6 % of 350 Ω ≤ 5 … Prüfung", charset, piece));
    }
  }

  @Test
  void aCharacterOfTwoHalvesIsOneQuestionMark() throws IOException {
    assertEquals("a?b", shown("a\uD83D\uDE00b", "IBM850", 1));
  }

  @Test
  void moreThanABufferIsShownWhole() throws IOException {
    String text = "Ω−ü ".repeat(5000);
    assertEquals("ohm-ü ".repeat(5000), shown(text, "IBM850", 777));
  }

  /**
   * No sign that the explanations and messages use becomes a question mark on a western console.
   */
  @ParameterizedTest
  @ValueSource(strings = {"IBM437", "IBM850", "windows-1252"})
  void everyMessageCanBeRead(String charset) throws IOException {
    Path main = Repository.ROOT.resolve("src/main");
    TreeSet<String> lost = new TreeSet<>();
    for (Map.Entry<String, String> ending :
        Map.of("java/passband/check", ".java", "resources/passband/explain", ".md").entrySet()) {
      for (Path file : Repository.files(main.resolve(ending.getKey()), ending.getValue())) {
        Repository.text(file)
            .codePoints()
            .filter(c -> c != '?' && !Character.isLetter(c))
            .mapToObj(Character::toString)
            .distinct()
            .filter(c -> shownQuietly(c, charset).equals("?"))
            .forEach(lost::add);
      }
    }
    assertTrue(lost.isEmpty(), lost.toString());
  }

  private static String shownQuietly(String text, String charset) {
    try {
      return shown(text, charset, 8);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}
