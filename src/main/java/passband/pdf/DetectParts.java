package passband.pdf;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import passband.detect.Detection;
import passband.draw.Drawing;
import passband.render.DetectPage;
import passband.render.DetectWords;
import passband.words.Language;

/** What the procedure catches, for the reviewer: a curve for each mode and a matrix. */
final class DetectParts {
  /** So many modes and outlets have room beside the fault. */
  private static final int COLUMNS = 4;

  private final Detection detection;
  private final PartWriter write;
  private final Language language;
  private final DetectWords words;

  DetectParts(Detection detection, PartWriter write, Language language) {
    this.detection = detection;
    this.write = write;
    this.language = language;
    this.words = new DetectWords(language);
  }

  void add() {
    write.heading(language.of("detect.caught-heading"));
    write.note(capital(words.summary(detection)) + ".");
    List<Drawing> curves = DetectPage.curves(detection, language);
    if (!curves.isEmpty()) {
      write.note(language.of("detect.curves"));
      for (int i = 0; i < curves.size(); i += 2) {
        List<Drawing> two = curves.subList(i, Math.min(i + 2, curves.size()));
        write.add(new PicturesPart(write.path("Div:power"), two, write.inner()));
      }
    }
    hidden();
    matrix();
    for (String line : words.assumptions(detection)) {
      write.note(line);
    }
  }

  /** What a slip on the bench keeps from being noticed. */
  private void hidden() {
    List<String> lines = words.hidden(detection);
    if (!lines.isEmpty()) {
      write.heading(language.of("detect.hidden"));
      lines.forEach(write::note);
    }
  }

  private static String capital(String words) {
    return words.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + words.substring(1);
  }

  /** Modes and outlets with the same answers share a column; a few columns to a table. */
  private void matrix() {
    List<String> places = DetectPage.placeNames(detection);
    List<DetectPage.MatrixRow> rows = DetectPage.matrix(detection, words);
    if (rows.isEmpty()) {
      return;
    }
    write.heading(language.of("detect.matrix"));
    write.add(write.paragraph(language.of("detect.matrix.note"), false).kept());
    Map<List<String>, String> columns = new LinkedHashMap<>();
    for (int i = 0; i < places.size(); i++) {
      List<String> column = new ArrayList<>();
      for (DetectPage.MatrixRow row : rows) {
        column.add(row.cells().get(i).text());
      }
      columns.merge(column, places.get(i), (a, b) -> a + ", " + b);
    }
    List<Map.Entry<List<String>, String>> all = new ArrayList<>(columns.entrySet());
    for (int i = 0; i < all.size(); i += COLUMNS) {
      table(rows, all.subList(i, Math.min(i + COLUMNS, all.size())));
    }
  }

  private void table(
      List<DetectPage.MatrixRow> rows, List<Map.Entry<List<String>, String>> columns) {
    List<String> heads = new ArrayList<>(List.of(language.of("detect.fault")));
    double[] shares = new double[columns.size() + 1];
    shares[0] = 1 - 0.16 * columns.size();
    for (int i = 0; i < columns.size(); i++) {
      heads.add(columns.get(i).getValue());
      shares[i + 1] = 0.16;
    }
    List<List<String>> cells = new ArrayList<>();
    for (int r = 0; r < rows.size(); r++) {
      List<String> row = new ArrayList<>();
      row.add(rows.get(r).id() + " " + rows.get(r).name());
      for (Map.Entry<List<String>, String> column : columns) {
        row.add(column.getKey().get(r));
      }
      cells.add(row);
    }
    write.listing(write.shares(shares), heads, cells);
  }
}
