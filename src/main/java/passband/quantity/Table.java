package passband.quantity;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Reads the tables of facts: a line a fact, tabs between its parts, comments after {@code #}. */
public final class Table {
  private Table() {}

  static List<String[]> read(String name) {
    return read(Table.class, name);
  }

  /** The facts of a table beside a class. */
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
