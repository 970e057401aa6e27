package passband.render;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.List;
import passband.judge.Cell;
import passband.plan.Plan;

/** {@code limits.csv}: a row for each point and accepted quantity. RFC 4180, lines ended by LF. */
public final class LimitsCsv {
  /** The columns, in order. */
  public static final List<String> COLUMNS =
      List.of(
          "procedure",
          "revision",
          "point",
          "test",
          "outlet",
          "mode",
          "setting",
          "setting_unit",
          "load",
          "load_unit",
          "quantity",
          "unit",
          "nominal",
          "lower",
          "upper",
          "accept_lower",
          "accept_upper",
          "resolution",
          "uncertainty",
          "accuracy_ratio",
          "decision",
          "source",
          "digest");

  private LimitsCsv() {}

  /** The whole file. */
  public static String of(Plan plan) {
    return of(plan, LimitRow.of(plan));
  }

  /** The whole file from rows that are made already. */
  public static String of(Plan plan, List<LimitRow> rows) {
    StringWriter out = new StringWriter();
    try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(out)) {
      write(plan, rows, csv);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString();
  }

  private static void write(Plan plan, List<LimitRow> rows, CsvWriter csv) {
    csv.writeRecord(COLUMNS);
    for (LimitRow r : rows) {
      List<String> cells =
          Arrays.asList(
              plan.name().text(),
              plan.revision().label(),
              r.point(),
              r.test(),
              r.outlet(),
              r.mode(),
              r.setting(),
              r.settingUnit(),
              r.load(),
              r.loadUnit(),
              r.quantity(),
              r.unit(),
              r.nominal(),
              r.lower(),
              r.upper(),
              r.acceptLower(),
              r.acceptUpper(),
              r.resolution(),
              r.uncertainty(),
              r.accuracyRatio(),
              r.decision(),
              r.source(),
              plan.digest());
      csv.writeRecord(cells.stream().map(Cell::written).toList());
    }
  }
}
