package passband.render;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.judge.Cell;
import passband.limit.Decision;
import passband.limit.Limit;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.quantity.Real;

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

  /**
   * The whole file: numbers are plain decimals in their unit, units are UCUM codes, and a cell is
   * empty where there is nothing.
   */
  public static String of(Plan plan) {
    StringWriter out = new StringWriter();
    try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(out)) {
      write(plan, csv);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString();
  }

  private static void write(Plan plan, CsvWriter csv) {
    csv.writeRecord(COLUMNS);
    for (Stage.Run run : plan.runs()) {
      for (Point point : run.points()) {
        for (Limit limit : point.limits()) {
          csv.writeRecord(cells(plan, run, point, limit).stream().map(Cell::written).toList());
        }
      }
    }
  }

  private static List<String> cells(Plan plan, Stage.Run run, Point point, Limit limit) {
    return Arrays.asList(
        plan.name().text(),
        plan.revision().label(),
        limit.id(),
        run.test().text(),
        run.outlet() == null ? null : run.outlet().name().text(),
        point.mode() == null ? null : point.mode().name().text(),
        number(point.setting()),
        unit(point.setting()),
        number(point.load()),
        unit(point.load()),
        limit.quantity(),
        limit.unit().ucum(),
        nominal(limit),
        limit.end(limit.printed().lower()),
        limit.end(limit.printed().upper()),
        limit.end(limit.accept().lower()),
        limit.end(limit.accept().upper()),
        limit.text(limit.resolution()),
        uncertainty(limit),
        limit.ratioText(),
        decision(plan.decision()),
        limit.source().word(),
        plan.digest());
  }

  private static String decision(Decision decision) {
    String word = decision.kind().word();
    return decision.risk() == null
        ? word
        : word + " " + decision.risk().times(Rational.HUNDRED).toPlain() + " %";
  }

  /** Expanded, three significant digits rounded up (JCGM 100, 7.2.6). */
  private static @Nullable String uncertainty(Limit limit) {
    Real expanded = limit.expanded();
    return expanded == null
        ? null
        : expanded
            .over(Real.of(limit.unit().factor()))
            .toDecimal(3, RoundingMode.UP)
            .toPlainString();
  }

  private static @Nullable String number(@Nullable Figure figure) {
    return figure == null ? null : figure.number().toPlain();
  }

  private static @Nullable String unit(@Nullable Figure figure) {
    return figure == null ? null : figure.unit().ucum();
  }

  /** Six significant digits without needless zeros; null for null. */
  private static @Nullable String nominal(Limit limit) {
    Real si = limit.exact().nominal();
    if (si == null) {
      return null;
    }
    var decimal = si.over(Real.of(limit.unit().factor())).toDecimal(6, RoundingMode.HALF_EVEN);
    return decimal.signum() == 0 ? "0" : decimal.stripTrailingZeros().toPlainString();
  }
}
