package passband.record;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import passband.evidence.BadInput;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.evidence.LimitsReader;
import passband.judge.Judge;
import passband.judge.Judgement;
import passband.judge.Readings;
import passband.judge.Report;
import passband.judge.Verdict;

/**
 * What is kept of one visit to one generator.
 *
 * @param program the version that judged
 * @param judgedOn the date of the judgement as ISO 8601; null where it was not given
 * @param limits the limits file, whole
 * @param readings the readings file, whole
 * @param report what came out
 */
public record VisitRecord(
    String program,
    @Nullable String judgedOn,
    Particulars particulars,
    KeptFile limits,
    KeptFile readings,
    Report report) {

  /**
   * Judges the parts.
   *
   * @param particulars by key
   * @throws BadInput when a part cannot be read, or the two do not belong together
   */
  public static VisitRecord of(
      String program,
      @Nullable String judgedOn,
      Map<String, String> particulars,
      KeptFile limits,
      KeptFile readings)
      throws BadInput {
    ItemList list = in(limits, () -> LimitsReader.read(limits.text()));
    Readings table = in(readings, () -> Readings.parse(readings.bytes()));
    Report report = in(readings, () -> Judge.judge(list, table, judgedOn));
    List<String> roles =
        list.source().instruments().stream().map(ItemList.Instrument::role).toList();
    Particulars said = Particulars.of(particulars, roles);
    return new VisitRecord(program, judgedOn, said, limits, readings, report);
  }

  private interface Work<T> {
    T done() throws BadInput;
  }

  private static <T> T in(KeptFile part, Work<T> work) throws BadInput {
    try {
      return work.done();
    } catch (BadInput e) {
      throw new BadInput(part.name() + ": " + e.getMessage());
    }
  }

  /**
   * What the sheet itself asks for and was last written, by name; null for what was not, or cannot
   * be told.
   */
  public Map<String, @Nullable String> identity() {
    Map<String, @Nullable String> identity = new LinkedHashMap<>();
    for (Item item : report.list().items()) {
      String name = item instanceof Item.Recorded blank ? blank.sheetName() : null;
      if (name != null) {
        identity.put(name, report.readings().record(name));
      }
    }
    return identity;
  }

  /** The instruments in the order of their roles. */
  public List<UsedInstrument> instruments() {
    List<UsedInstrument> instruments = new ArrayList<>();
    for (ItemList.Instrument one : report.list().source().instruments()) {
      String role = one.role();
      instruments.add(
          new UsedInstrument(
              role,
              one.name(),
              report.readings().record(role + "-serial"),
              report.readings().record(role + "-due"),
              particulars.said().get(Particulars.CERTIFICATE + role)));
    }
    return instruments;
  }

  /** What failed before anything was adjusted: in a phase after which there is another. */
  public List<Judgement> failedAsFound() {
    List<String> phases = report.list().phases();
    return failed(j -> phases.indexOf(j.item().head().phase()) < phases.size() - 1);
  }

  /** What fails of what decides, without what failed as found. */
  public List<Judgement> failed() {
    List<Judgement> before = failedAsFound();
    return failed(j -> !before.contains(j));
  }

  /** What failed, was read again and fails no more. */
  public List<Repeat> repeats() {
    return Repeat.of(report);
  }

  private List<Judgement> failed(Predicate<Judgement> which) {
    return report.judgements().stream()
        .filter(j -> j.verdict() == Verdict.FAIL && which.test(j))
        .toList();
  }

  /**
   * What was done otherwise than the procedure says, or is worth a remark, in the sheet's order.
   */
  public List<Deviation> deviations() {
    List<Deviation> deviations = new ArrayList<>();
    for (Judgement judgement : report.judgements()) {
      List<Readings.Row> rows = report.written().getOrDefault(judgement.item().id(), List.of());
      for (int i = 0; i < rows.size(); i++) {
        Readings.Row row = rows.get(i);
        Deviation.Kind kind = kind(row, i > 0);
        if (kind != null) {
          deviations.add(
              new Deviation(
                  kind, judgement, row.attempt(), row.notes().by(), reasoned(row.notes())));
        }
      }
    }
    return deviations;
  }

  private static Deviation.@Nullable Kind kind(Readings.Row row, boolean again) {
    if (row.kind().equals("not-done")) {
      return Deviation.Kind.NOT_DONE;
    }
    return again
        ? Deviation.Kind.REPEATED
        : reasoned(row.notes()).isEmpty() ? null : Deviation.Kind.REMARK;
  }

  private static String reasoned(Readings.Notes notes) {
    List<String> said = new ArrayList<>();
    for (String text : List.of(notes.reason(), notes.remark())) {
      if (!text.isEmpty()) {
        said.add(text);
      }
    }
    return String.join("; ", said);
  }
}
