package passband.draw;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.StringTokenizer;
import java.util.function.IntToDoubleFunction;

/**
 * How wide text is in the type that the drawings ask for first, DejaVu Sans Condensed, which is
 * wider than the ones they fall back to.
 */
public final class TextWidths {
  private static final double OTHER = 0.9;
  private static final String POINTS = "\u2026";

  private TextWidths() {}

  /** Read when a width is asked for. */
  private static final class Table {
    private static final Map<Integer, double[]> WIDTHS = read();

    private static Map<Integer, double[]> read() {
      Map<Integer, double[]> widths = new HashMap<>();
      try (InputStream in = TextWidths.class.getResourceAsStream("widths.tsv");
          BufferedReader lines =
              new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
        for (String line = lines.readLine(); line != null; line = lines.readLine()) {
          if (!line.startsWith("#")) {
            String[] cells = line.split("\t");
            widths.put(
                Integer.parseInt(cells[0], 16),
                new double[] {
                  Integer.parseInt(cells[1]) / 1000.0, Integer.parseInt(cells[2]) / 1000.0
                });
          }
        }
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      return widths;
    }
  }

  /** The advance of a text, in the unit of the type's size. */
  public static double width(String text, double size, boolean bold) {
    return added(0, text, c -> advance(c, bold)) * size;
  }

  private static double advance(int c, boolean bold) {
    double[] width = Table.WIDTHS.get(c);
    return width == null ? OTHER : width[bold ? 1 : 0];
  }

  private static double added(double sum, String text, IntToDoubleFunction advance) {
    int c;
    for (int i = 0; i < text.length(); i += Character.charCount(c)) {
      c = text.codePointAt(i);
      sum += advance.applyAsDouble(c);
    }
    return sum;
  }

  /**
   * The text in lines no wider than {@code width}, broken at spaces, or in a word that is wider.
   */
  public static List<String> wrapped(String text, double width, double size, boolean bold) {
    return wrapped(text, width, size, c -> advance(c, bold));
  }

  /** The same in at most so many lines, with three points in place of the rest. */
  static List<String> wrapped(String text, double width, double size, boolean bold, int most) {
    List<String> lines = wrapped(text, width, size, bold);
    if (lines.size() <= most) {
      return lines;
    }
    String last = lines.get(most - 1);
    while (width(last + POINTS, size, bold) > width) {
      last = last.substring(0, last.offsetByCodePoints(last.length(), -1));
    }
    List<String> some = new ArrayList<>(lines.subList(0, most - 1));
    some.add(last + POINTS);
    return some;
  }

  /**
   * The same by the advances of another type; no letter is measured more often than three times.
   */
  static List<String> wrapped(String text, double width, double size, IntToDoubleFunction advance) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    double used = 0;
    StringTokenizer words = new StringTokenizer(text);
    while (words.hasMoreTokens()) {
      String word = words.nextToken();
      double joined = line.isEmpty() ? 0 : added(added(used, " ", advance), word, advance);
      if (joined * size > width) {
        lines.add(line.toString());
        line.setLength(0);
      }
      if (line.isEmpty()) {
        List<String> pieces = WordPieces.of(word, width, size, advance);
        String last = pieces.remove(pieces.size() - 1);
        lines.addAll(pieces);
        line.append(last);
        used = added(0, last, advance);
      } else {
        line.append(' ').append(word);
        used = joined;
      }
    }
    lines.add(line.toString());
    return lines;
  }
}
