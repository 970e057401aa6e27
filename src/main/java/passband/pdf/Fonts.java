package passband.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** DejaVu Sans Condensed, embedded as far as it is used. */
final class Fonts implements TypeWidths {
  /** Reading a font takes as long as a page; it is not for two threads at once. */
  private static final ThreadLocal<Map<String, TrueTypeFont>> READ =
      ThreadLocal.withInitial(HashMap::new);

  private static final String LOST = "\u25a1";

  private final PDType0Font regular;
  private final PDType0Font bold;
  private final Map<Integer, Float> regularAdvances = new HashMap<>();
  private final Map<Integer, Float> boldAdvances = new HashMap<>();
  private final Map<Integer, Boolean> known = new HashMap<>();

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

  @Override
  public double width(String text, double size, boolean isBold) {
    float sum = 0;
    int c;
    for (int i = 0; i < text.length(); i += Character.charCount(c)) {
      c = text.codePointAt(i);
      sum += known(c, isBold);
    }
    return size * (sum / 1000.0);
  }

  @Override
  public double advance(int codePoint, boolean isBold) {
    return known(codePoint, isBold);
  }

  /** The text as far as it fits in a width, with three points in place of the rest. */
  String cut(String text, double size, boolean isBold, double width) {
    double most = width - width("\u2026", size, isBold);
    double used = 0;
    int end = 0;
    int c;
    for (int i = 0; i < text.length(); i += Character.charCount(c)) {
      c = text.codePointAt(i);
      end = used <= most ? i : end;
      used += known(c, isBold) * size / 1000;
      if (used > width) {
        return text.substring(0, end).stripTrailing() + "\u2026";
      }
    }
    return text;
  }

  private float known(int c, boolean isBold) {
    Map<Integer, Float> advances = isBold ? boldAdvances : regularAdvances;
    Float advance = advances.get(c);
    if (advance == null) {
      advance = measured(has(c) ? Character.toString(c) : LOST, isBold);
      advances.put(c, advance);
    }
    return advance;
  }

  private float measured(String character, boolean isBold) {
    try {
      return font(isBold).getStringWidth(character);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The text with a box for each character that the type does not have. */
  String shown(String text) {
    StringBuilder shown = new StringBuilder(text.length());
    int c;
    for (int i = 0; i < text.length(); i += Character.charCount(c)) {
      c = text.codePointAt(i);
      if (has(c)) {
        shown.appendCodePoint(c);
      } else {
        shown.append(LOST);
      }
    }
    return shown.toString();
  }

  private boolean has(int character) {
    Boolean has = known.get(character);
    if (has == null) {
      has = encodes(Character.toString(character));
      known.put(character, has);
    }
    return has;
  }

  private boolean encodes(String character) {
    try {
      regular.encode(character);
      return true;
    } catch (IOException | IllegalArgumentException e) {
      return false;
    }
  }
}
