package passband.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.StringTokenizer;

/** Words of one size, some of them bold, broken into lines of a width. */
final class TextBlock {
  private static final double LEADING = 1.3;
  private static final double ASCENT = 0.95;

  private final double size;
  private final List<List<Word>> lines = new ArrayList<>();

  private record Word(String text, boolean bold, double x) {}

  /** Some words in one weight. */
  record Span(String text, boolean bold) {}

  TextBlock(Fonts fonts, double size, double width, List<Span> spans) {
    this.size = size;
    double x = 0;
    List<Word> line = new ArrayList<>();
    for (Span span : spans) {
      StringTokenizer words = new StringTokenizer(span.text());
      while (words.hasMoreTokens()) {
        for (String piece : pieces(fonts, words.nextToken(), span.bold(), width)) {
          double wide = fonts.width(piece, size, span.bold());
          double space = line.isEmpty() ? 0 : fonts.width(" ", size, span.bold());
          if (!line.isEmpty() && x + space + wide > width + 0.01) {
            lines.add(line);
            line = new ArrayList<>();
            x = 0;
            space = 0;
          }
          line.add(new Word(piece, span.bold(), x + space));
          x += space + wide;
        }
      }
    }
    lines.add(line);
  }

  static TextBlock of(Fonts fonts, double size, double width, boolean bold, String text) {
    return new TextBlock(fonts, size, width, List.of(new Span(text, bold)));
  }

  /** A word, or parts of one that is wider than the line. */
  private List<String> pieces(Fonts fonts, String word, boolean bold, double width) {
    List<String> pieces = new ArrayList<>();
    String rest = word;
    while (fonts.width(rest, size, bold) > width && rest.codePointCount(0, rest.length()) > 1) {
      int end = rest.length();
      while (end > 1 && fonts.width(rest.substring(0, end), size, bold) > width) {
        end = rest.offsetByCodePoints(end, -1);
      }
      end = Math.max(end, rest.offsetByCodePoints(0, 1));
      pieces.add(rest.substring(0, end));
      rest = rest.substring(end);
    }
    if (!rest.isEmpty() || pieces.isEmpty()) {
      pieces.add(rest);
    }
    return pieces;
  }

  double height() {
    return lines.size() * size * LEADING;
  }

  void draw(Canvas canvas, double x, double top) throws IOException {
    double baseline = top + size * (ASCENT + (LEADING - 1.2) / 2);
    for (List<Word> line : lines) {
      int i = 0;
      while (i < line.size()) {
        StringBuilder together = new StringBuilder(line.get(i).text());
        int next = i + 1;
        while (next < line.size() && line.get(next).bold() == line.get(i).bold()) {
          together.append(' ').append(line.get(next).text());
          next++;
        }
        canvas.text(together.toString(), x + line.get(i).x(), baseline, size, line.get(i).bold());
        i = next;
      }
      baseline += size * LEADING;
    }
  }
}
