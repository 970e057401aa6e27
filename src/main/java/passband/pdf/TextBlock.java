package passband.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.StringTokenizer;
import passband.draw.WordPieces;

/** Words of one size, some of them bold, broken into lines of a width; see {@link Unbroken}. */
final class TextBlock {
  private static final double LEADING = 1.25;
  private static final double ASCENT = 0.95;

  private final double size;
  private final List<List<Word>> lines;

  private record Word(String text, boolean bold, double x) {}

  /** Some words in one weight. */
  record Span(String text, boolean bold) {}

  TextBlock(TypeWidths widths, double size, double width, List<Span> spans) {
    this.size = size;
    this.lines = new ArrayList<>();
    double x = 0;
    List<Word> line = new ArrayList<>();
    for (Span span : spans) {
      for (String unbroken : Unbroken.of(span.text())) {
        for (String piece : pieces(widths, width, unbroken, span.bold())) {
          double wide = widths.width(piece, size, span.bold());
          double space = line.isEmpty() ? 0 : widths.width(" ", size, span.bold());
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

  /** One; its words alone where all together are wider than a line, those too wide in pieces. */
  private List<String> pieces(TypeWidths widths, double width, String unbroken, boolean bold) {
    if (widths.width(unbroken, size, bold) <= width + 0.01) {
      return List.of(unbroken);
    }
    List<String> pieces = new ArrayList<>();
    StringTokenizer words = new StringTokenizer(unbroken);
    while (words.hasMoreTokens()) {
      pieces.addAll(
          WordPieces.of(words.nextToken(), width, size / 1000, c -> widths.advance(c, bold)));
    }
    return pieces;
  }

  private TextBlock(double size, List<List<Word>> lines) {
    this.size = size;
    this.lines = lines;
  }

  static TextBlock of(TypeWidths widths, double size, double width, boolean bold, String text) {
    return new TextBlock(widths, size, width, List.of(new Span(text, bold)));
  }

  /** How far the first line of a size stands below the top, in points. */
  static double baseline(double size) {
    return size * (ASCENT + (LEADING - 1.2) / 2);
  }

  double height() {
    return lines.size() * size * LEADING;
  }

  /** How many lines it has. */
  int lines() {
    return lines.size();
  }

  /** How many lines of its type have room in a height; none where that is below zero. */
  int linesIn(double room) {
    return (int) Math.max(0, Math.floor(room / (size * LEADING) + 1e-9));
  }

  /** Its first lines, this many. */
  TextBlock upper(int count) {
    return new TextBlock(size, lines.subList(0, count));
  }

  /** Its lines without the first, this many. */
  TextBlock lower(int count) {
    return new TextBlock(size, lines.subList(count, lines.size()));
  }

  void draw(Canvas canvas, double x, double top) throws IOException {
    double baseline = top + baseline(size);
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
