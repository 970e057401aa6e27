package passband.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** DejaVu Sans Condensed, embedded as far as it is used. */
final class Fonts {
  /** Reading a font takes as long as a page; it is not for two threads at once. */
  private static final ThreadLocal<Map<String, TrueTypeFont>> READ =
      ThreadLocal.withInitial(HashMap::new);

  private static final String LOST = "\u25a1";

  private final PDType0Font regular;
  private final PDType0Font bold;
  private final Map<String, Double> widths = new HashMap<>();
  private final Set<String> lost = new TreeSet<>();

  Fonts(PDDocument document) throws IOException {
    regular = load(document, "DejaVuSansCondensed.ttf");
    bold = load(document, "DejaVuSansCondensed-Bold.ttf");
  }

  private static PDType0Font load(PDDocument document, String name) throws IOException {
    Map<String, TrueTypeFont> read = READ.get();
    if (!read.containsKey(name)) {
      try (InputStream in = Fonts.class.getResourceAsStream("/passband/fonts/" + name)) {
        TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes()));
        font.setEnableGsub(false); // no ligatures: text is found by its letters
        read.put(name, font);
      }
    }
    return PDType0Font.load(document, read.get(name), true);
  }

  PDType0Font font(boolean isBold) {
    return isBold ? bold : regular;
  }

  /** How wide a text is, in points. */
  double width(String text, double size, boolean isBold) {
    return size
        * widths.computeIfAbsent(
            (isBold ? "b" : "r") + text,
            k -> {
              try {
                return font(isBold).getStringWidth(shown(text)) / 1000.0;
              } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
              }
            });
  }

  /** The text with a box for each character that the type does not have. */
  String shown(String text) {
    StringBuilder shown = new StringBuilder(text.length());
    text.codePoints()
        .forEach(
            c -> {
              String one = Character.toString(c);
              boolean has = has(one);
              shown.append(has ? one : LOST);
              if (!has) {
                lost.add(one);
              }
            });
    return shown.toString();
  }

  /** The characters asked for that the type does not have. */
  Set<String> lost() {
    return lost;
  }

  private boolean has(String character) {
    try {
      regular.encode(character);
      return true;
    } catch (IOException | IllegalArgumentException e) {
      return false;
    }
  }
}
