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

/**
 * How wide text is in the type that the drawings ask for first, DejaVu Sans Condensed, which is
 * wider than the ones they fall back to.
 */
public final class TextWidths {
  private static final double OTHER = 0.9;
  private static final Map<Integer, double[]> WIDTHS = read();

  private TextWidths() {}

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

  /** The advance of a text, in the unit of the type's size. */
  public static double width(String text, double size, boolean bold) {
    double sum = 0;
    int c;
    for (int i = 0; i < text.length(); i += Character.charCount(c)) {
      c = text.codePointAt(i);
      double[] width = WIDTHS.get(c);
      sum += width == null ? OTHER : width[bold ? 1 : 0];
    }
    return sum * size;
  }

  /**
   * The text in lines no wider than {@code width}, broken at spaces, or in a word that is wider.
   */
  public static List<String> wrapped(String text, double width, double size, boolean bold) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    StringTokenizer words = new StringTokenizer(text);
    while (words.hasMoreTokens()) {
      String rest = words.nextToken();
      String joined = line.isEmpty() ? rest : line + " " + rest;
      if (!line.isEmpty() && width(joined, size, bold) > width) {
        lines.add(line.toString());
        line.setLength(0);
      }
      while (line.isEmpty() && width(rest, size, bold) > width) {
        int fits = fitting(rest, width, size, bold);
        lines.add(rest.substring(0, fits));
        rest = rest.substring(fits);
      }
      line.append(line.isEmpty() ? "" : " ").append(rest);
    }
    lines.add(line.toString());
    return lines;
  }

  private static int fitting(String word, double width, double size, boolean bold) {
    int end = word.offsetByCodePoints(0, 1);
    while (end < word.length()) {
      int next = word.offsetByCodePoints(end, 1);
      if (width(word.substring(0, next), size, bold) > width) {
        break;
      }
      end = next;
    }
    return end;
  }
}
