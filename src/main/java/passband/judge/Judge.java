package passband.judge;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.evidence.BadInput;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.evidence.ItemNames;
import passband.words.Language;

/** Compares what was written down with what is accepted, item by item. */
public final class Judge {
  private final ItemList list;
  private final Readings readings;
  private final List<Cause> warnings = new ArrayList<>();

  private Judge(ItemList list, Readings readings) {
    this.list = list;
    this.readings = readings;
  }

  /**
   * Judges a set of readings.
   *
   * @param today the date of the judgement as ISO 8601, by which it is warned of calibrations that
   *     have run out since; null where it is not known: there is no clock here
   * @throws BadInput when the readings are of another procedure, or name an item that there is not
   */
  public static Report judge(ItemList list, Readings readings, @Nullable String today)
      throws BadInput {
    return new Judge(list, readings).report(today);
  }

  private Report report(@Nullable String today) throws BadInput {
    checkSource();
    Map<String, Attempts> attempts = attempts();
    Applicability applicability = new Applicability(list, attempts);
    Calibration calibration = new Calibration(list, attempts, applicability);
    warnings.addAll(calibration.warnings(today == null ? null : Calibration.day(today)));
    if (readings.digest() == null) {
      warnings.add(Cause.of(Cause.Code.NO_DIGEST, null));
    }
    ItemJudge judge = new ItemJudge(list, attempts, applicability, calibration);
    List<Judgement> judgements = new ArrayList<>();
    list.items().forEach(item -> judgements.add(item.accept(judge)));
    if (list.pointsOnly()) {
      warnings.add(Cause.of(Cause.Code.POINTS_ONLY, null));
    }
    if (list.source().isUnreleased()) {
      warnings.add(0, Cause.of(Cause.Code.NOT_RELEASED, null));
    }
    List<Judgement> gated = Gates.of(list, judgements);
    Cause contradicted = contradicted(gated, attempts);
    if (contradicted != null) {
      warnings.add(contradicted);
    }
    return Report.of(list, readings, attempts, gated, List.copyOf(warnings));
  }

  /** Where the sheet's own result is another than that of everything else on it. */
  private @Nullable Cause contradicted(List<Judgement> judgements, Map<String, Attempts> attempts) {
    Item.Choice result = null;
    List<Judgement> others = new ArrayList<>();
    for (Judgement one : judgements) {
      if (one.item() instanceof Item.Choice choice && choice.id().equals(Item.RESULT)) {
        result = choice;
      } else {
        others.add(one);
      }
    }
    Attempts written = attempts.getOrDefault(Item.RESULT, Attempts.NONE);
    if (result == null || written.none()) {
      return null;
    }
    Verdict said = said(result, written.last().reading());
    Verdict overall = Report.overall(list, readings, others);
    return said == null || said == overall
        ? null
        : Cause.of(Cause.Code.RESULT_CONTRADICTED, Item.RESULT)
            .at(written.last(), "reading")
            .note(overall.word());
  }

  /** What an outcome of the sheet's own result means; null where it is none of them. */
  private static @Nullable Verdict said(Item.Choice result, String written) {
    return switch (result.options().indexOf(written)) {
      case 0 -> Verdict.PASS;
      case 1 -> Verdict.FAIL;
      case 2 -> Verdict.INCOMPLETE;
      default -> null;
    };
  }

  /** That the readings are of this procedure and revision. */
  private void checkSource() throws BadInput {
    if (readings.digest() != null && !readings.digest().equals(list.source().digest())) {
      throw new BadInput(
          "the readings belong to another procedure or revision: their digest is "
              + shortened(readings.digest())
              + ", that of the limits is "
              + shortened(list.source().digest()));
    }
    for (Readings.Row row : readings.rows()) {
      ofTheProcedure(row, list.source());
    }
  }

  private static String shortened(String digest) {
    return digest.length() > 12 ? digest.substring(0, 12) : digest;
  }

  // ---- which row is of which item ----

  private Map<String, Attempts> attempts() throws BadInput {
    Map<String, List<Readings.Row>> rows = new HashMap<>();
    Map<String, Item> items = new HashMap<>();
    DecimalMark mark = DecimalMark.of(list.source().language(), readings);
    list.items().forEach(item -> rows.put(item.id(), new ArrayList<>()));
    list.items().forEach(item -> items.put(item.id(), item));
    Set<String> unknown = new LinkedHashSet<>();
    for (Readings.Row row : readings.rows()) {
      String id = rows.containsKey(row.point()) ? row.point() : phased(row);
      if (rows.containsKey(id)) {
        Item item = Objects.requireNonNull(items.get(id), id);
        ofItsPhase(row, item, list);
        ofItsPoint(row, item, list);
        rows.get(id).add(ItemJudge.unit(item) == null ? row : mark.plain(row));
      } else {
        unknown.add(row.point() + " (line " + row.line() + ")");
      }
    }
    if (!unknown.isEmpty()) {
      throw new BadInput("these points are not in the limits: " + String.join(", ", unknown));
    }
    Map<String, Attempts> attempts = new HashMap<>();
    rows.forEach((id, of) -> attempts.put(id, Attempts.of(id, of)));
    return attempts;
  }

  /** A row whose phase is not its point's was copied or moved; of which phase it is, is unknown. */
  private static void ofItsPhase(Readings.Row row, Item item, ItemList list) throws BadInput {
    String phase = item.head().phase();
    if (phase != null && !row.phase().isEmpty() && !row.phase().equals(phase)) {
      throw new BadInput(
          "line "
              + row.line()
              + ": the phase is '"
              + row.phase()
              + "', but the point is of '"
              + phase
              + "': "
              + ItemNames.of(list).of(item));
    }
  }

  /** A row of another procedure or revision; or a program has changed its text, 1.10 to 1.1. */
  private static void ofTheProcedure(Readings.Row row, ItemList.Source source) throws BadInput {
    for (ReadingColumn column : ReadingColumn.of(ReadingColumn.Use.SOURCE)) {
      String said = row.said().getOrDefault(column, "");
      String own = column.text(source);
      if (!said.isEmpty() && !said.equals(own)) {
        throw new BadInput(
            "line "
                + row.line()
                + ": the column '"
                + column.word()
                + "' says '"
                + said
                + "', but the limits are of '"
                + own
                + "' (if a spreadsheet changed it, clear the column: the digest tells)");
      }
    }
  }

  /** A row that names another setting, load or limits than its point has was copied or moved. */
  private static void ofItsPoint(Readings.Row row, Item item, ItemList list) throws BadInput {
    Language language = Language.orEnglish(list.source().language());
    for (Map.Entry<ReadingColumn, String> said : row.said().entrySet()) {
      List<String> texts = said.getKey().texts(item, language);
      String own = texts.get(0);
      if (said.getKey().use() == ReadingColumn.Use.COMPARED && !texts.contains(said.getValue())) {
        throw new BadInput(
            "line "
                + row.line()
                + ": the column '"
                + said.getKey().word()
                + "' says '"
                + said.getValue()
                + "', but the point has "
                + (own.isEmpty() ? "none" : "'" + own + "'")
                + ": "
                + ItemNames.of(list).of(item));
      }
    }
  }

  /** The identity with the row's phase before its last part. */
  private static String phased(Readings.Row row) {
    int last = row.point().lastIndexOf('/');
    return last < 0 || row.phase().isEmpty()
        ? row.point()
        : row.point().substring(0, last) + "/" + row.phase() + row.point().substring(last);
  }
}
