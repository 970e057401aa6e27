package passband.parse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.testing.Repository;
import passband.testing.Snippet;

/** What the PDF's type lacks is said at its place, whatever kind of text or name it is in. */
class GlyphsTest {
  private static final Pattern TEXT = Pattern.compile("\"(?:[^\"\\\\]|\\\\.)*\"");
  private static final Pattern NO_TEXT = Pattern.compile(" *(use|table +from|#).*");
  private static final Pattern PROCEDURE = Pattern.compile("(?m)^procedure ");
  private static final String MISSING = "\u8b66";

  /** The table against the two types themselves, read by FontBox. */
  @Test
  void theTableIsThatOfTheType() throws IOException {
    List<Integer> wrong = new ArrayList<>();
    try (TrueTypeFont plain = font("DejaVuSansCondensed.ttf");
        TrueTypeFont bold = font("DejaVuSansCondensed-Bold.ttf")) {
      var plainGlyphs = plain.getUnicodeCmapLookup();
      var boldGlyphs = bold.getUnicodeCmapLookup();
      for (int c = 0xa0; c < 0x20000; c++) {
        boolean both = plainGlyphs.getGlyphId(c) != 0 && boldGlyphs.getGlyphId(c) != 0;
        if (Glyphs.has(c) != both) {
          wrong.add(c);
        }
      }
    }
    assertEquals(List.of(), wrong);
  }

  private static TrueTypeFont font(String name) throws IOException {
    try (InputStream in = GlyphsTest.class.getResourceAsStream("/passband/fonts/" + name)) {
      return new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes()));
    }
  }

  /** Every text of the demo library that is compiled gets such a character at its end. */
  @Test
  void everyTextIsSaidAtItsPlace() {
    Map<String, String> files = new HashMap<>(Repository.texts(Repository.PROCEDURES));
    TreeSet<String> wanted = new TreeSet<>();
    TreeMap<String, Integer> kinds = new TreeMap<>();
    files.replaceAll(
        (name, text) -> name.endsWith(".pband") ? marked(name, text, wanted, kinds) : text);
    TreeSet<String> said = new TreeSet<>();
    TreeSet<String> read = new TreeSet<>();
    for (String main : files.keySet()) {
      if (PROCEDURE.matcher(files.get(main)).find()) {
        for (Diagnostic one : Snippet.compile(files, main, null).diagnostics()) {
          read.add(one.span().file().path());
          if (one.code() == Code.GLYPH_MISSING) {
            said.add(place(one));
            assertTrue(one.message().contains(MISSING), one.message());
          }
        }
      }
    }
    wanted.removeIf(place -> !read.contains(place.split(":")[0]));
    assertEquals(wanted, said);
    assertTrue(wanted.size() > 300, wanted.size() + " texts");
    assertTrue(
        kinds.keySet().containsAll(List.of("caution", "confirm", "jack", "outlet", "record")));
  }

  private static String place(Diagnostic one) {
    return one.span().file().path() + ":" + one.span().line() + ":" + one.span().column();
  }

  /** A text that stands twice on a line, as an outcome that passes, stays the same text. */
  private static String marked(
      String name, String text, TreeSet<String> wanted, Map<String, Integer> kinds) {
    StringBuilder all = new StringBuilder();
    int number = 0;
    for (String line : text.split("\n", -1)) {
      number++;
      if (NO_TEXT.matcher(line).matches()) {
        all.append(line).append('\n');
        continue;
      }
      StringBuilder made = new StringBuilder();
      Matcher texts = TEXT.matcher(line);
      int from = 0;
      while (texts.find()) {
        made.append(line, from, texts.end() - 1);
        wanted.add(name + ":" + number + ":" + (made.length() + 1));
        kinds.merge(line.strip().split(" ")[0], 1, Integer::sum);
        made.append(MISSING).append('"');
        from = texts.end();
      }
      all.append(made).append(line.substring(from)).append('\n');
    }
    return all.toString();
  }

  /** Names are printed too: a procedure's in the head of every page, a phase's in its headings. */
  @ParameterizedTest
  @CsvSource({
    "made \"Made\", \u6e2c\u5b9a \"Made\", procedure",
    "as-found, \u524d, phase",
    "carve-output, \u51fa\u529b, test"
  })
  void aNameIsSaidOnce(String old, String now, String what) {
    Map<String, String> files = new HashMap<>(Repository.texts(Repository.LIBRARY));
    String main = "yarrow/yarrow-service.pband";
    String text = files.get(main);
    files.put(
        main,
        what.equals("procedure")
            ? text.replaceFirst("procedure [a-z-]+", "procedure \u6e2c\u5b9a")
            : text.replace(old, now));
    List<Diagnostic> said =
        Snippet.compile(files, main, null).diagnostics().stream()
            .filter(d -> d.code() == Code.GLYPH_MISSING)
            .toList();
    assertEquals(1, said.size(), said.toString());
    assertEquals(main, said.get(0).span().file().path());
  }
}
