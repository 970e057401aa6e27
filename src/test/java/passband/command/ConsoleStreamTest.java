package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Units and signs on consoles that do not have them. */
class ConsoleStreamTest {
  /** The encodings are Windows' for English, German, Polish and Japanese consoles, and ASCII. */
  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '\'',
      value = {
        "UTF-8,        '−5 µA ≤ 100 Ω ± 2 °C “a” → …'",
        "windows-1252, '-5 µA <= 100 ohm ± 2 °C “a” <U+2192> …'",
        "IBM850,       '-5 µA <= 100 ohm ± 2 °C \"a\" <U+2192> ...'",
        "IBM852,       '-5 uA <= 100 ohm +/- 2 °C \"a\" <U+2192> ...'",
        "US-ASCII,     '-5 uA <= 100 ohm +/- 2 deg C \"a\" <U+2192> ...'",
      })
  void nothingComesAsAQuestionMark(String charset, String expected) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ConsoleStream out = new ConsoleStream(bytes, Charset.forName(charset))) {
      out.print("−5 µA ≤ 100 Ω ± 2 °C “a” → …");
    }
    assertEquals(expected, bytes.toString(Charset.forName(charset)));
    assertEquals(0, new String(bytes.toByteArray(), StandardCharsets.ISO_8859_1).indexOf('?') + 1);
  }
}
