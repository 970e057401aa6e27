package passband.quantity;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Reads the tables of facts, a line a fact. */
public final class Table {
  private Table() {}

  /** The facts of a text: strokes between the parts of a line, spaces around them of no account. */
  static List<String[]> rows(String text) {
    List<String[]> rows = new ArrayList<>();
    for (String line : text.split("\n")) {
      String[] cells = line.split("\\|", -1);
      for (int i = 0; i < cells.length; i++) {
        cells[i] = cells[i].strip();
      }
      rows.add(cells);
    }
    return rows;
  }

  /**
   * The facts of a table beside a class: tabs between the parts of a line, comments after {@code
   * #}.
   */
  public static List<String[]> read(Class<?> beside, String name) {
    List<String[]> rows = new ArrayList<>();
    try (InputStream in = beside.getResourceAsStream(name);
        BufferedReader reader =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        if (!line.isBlank() && !line.startsWith("#")) {
          rows.add(line.split("\t", -1));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return rows;
  }
}
