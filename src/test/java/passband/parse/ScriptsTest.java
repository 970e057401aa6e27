package passband.parse;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.testing.Snippet;

/** Scripts whose letters the PDF would print wrong are refused where they stand. */
class ScriptsTest {
  private static List<Diagnostic> said(String text) {
    String source = "device d \"D\" {\n  action select \"Press " + text + ", then wait.\"\n}\n";
    return Snippet.compile(source).diagnostics().stream()
        .filter(d -> d.code() == Code.SCRIPT_NOT_PRINTABLE)
        .toList();
  }

  @ParameterizedTest
  @CsvSource({
    "Arabic, \u0645\u0631\u062d\u0628\u0627",
    "Hebrew, \u05e9\u05dc\u05d5\u05dd",
    "Syriac, \u0710\u0712",
    "Devanagari, \u0928\u092e\u0938\u094d\u0924\u0947",
    "Bengali, \u09b8\u09cd\u09ac",
    "Tamil, \u0bb5\u0ba3\u0b95\u0bcd",
    "Thai, \u0e2a\u0e27\u0e31\u0e2a\u0e14\u0e35",
    "Khmer, \u179f\u17bd",
    "Myanmar, \u1019\u1004\u103a",
    "Tibetan, \u0f56\u0f40\u0fb2",
    "Mongolian, \u182e\u1823",
    "Arabic, \ufee3\ufeae"
  })
  void isRefusedAtItsFirstLetter(String script, String text) {
    List<Diagnostic> said = said(text);
    assertEquals(1, said.size(), said.toString());
    assertEquals(2, said.get(0).span().line());
    assertEquals("  action select \"Press ".length() + 1, said.get(0).span().column());
    assertEquals(
        "checklist.pdf cannot print "
            + script
            + " letters: they join, stack or run from right to left",
        said.get(0).message());
  }

  /** What the PDF's font lacks of these is a warning of the build. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "\u00e9\u00df\u0142\u1ea1",
        "\u03a9\u03bc",
        "\u0416\u044f",
        "\u0531",
        "\u10d0",
        "\u6d4b\u8bd5",
        "\u3042\u30a2",
        "\ud55c\uae00",
        "\ud83d\udd25",
        "\u2264 \u00b1 \u2126 \u2014 \u201eTaste\u201c",
        "e\u0301"
      })
  void isLeft(String text) {
    assertEquals(List.of(), said(text));
  }
}
