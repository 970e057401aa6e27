package passband.judge;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import passband.evidence.Blank;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.quantity.Rational;
import passband.quantity.Real;

/** The verdict on each kind of item. */
final class ItemJudge implements Item.Visitor<Judgement> {
  private static final int DIGITS = 12;

  private final ItemList list;
  private final Map<String, Attempts> attempts;
  private final Applicability applicability;
  private final Calibration calibration;
  private final SameWave wave;
  private final Map<String, Item> byId = new HashMap<>();

  ItemJudge(
      ItemList list,
      Map<String, Attempts> attempts,
      Applicability applicability,
      Calibration calibration) {
    this.calibration = calibration;
    this.list = list;
    this.wave = new SameWave(list);
    this.attempts = attempts;
    this.applicability = applicability;
    list.items().forEach(item -> byId.put(item.id(), item));
  }

  private Attempts attempts(Item item) {
    return attempts.getOrDefault(item.id(), Attempts.NONE);
  }

  /** What can be said before the value is looked at; null where it has to be. */
  private @Nullable Judgement early(Item item, String kind) {
    Attempts written = attempts(item);
    if (!applicability.applies(item)) {
      return written.none()
          ? Judgement.of(item, List.of(), Verdict.NOT_APPLICABLE, List.of())
          : unclear(item, of(Cause.Code.DOES_NOT_APPLY, item).at(written.firstDone(), "reading"));
    }
    if (written.trouble() != null) {
      return unclear(item, written.trouble());
    }
    if (written.none()) {
      return Judgement.of(item, List.of(), Verdict.NOT_DONE, List.of());
    }
    String given = written.last().kind();
    return given.isEmpty()
            || given.equals(kind)
            || given.equals("derived") && item instanceof Item.Derived
        ? null
        : unclear(item, of(Cause.Code.OTHER_KIND, item).at(written.last(), "kind").note(kind));
  }

  private static Cause of(Cause.Code code, Item item) {
    return Cause.of(code, item.id());
  }

  private Judgement unclear(Item item, Cause cause) {
    return Judgement.of(item, written(item), Verdict.UNCLEAR, List.of(cause));
  }

  private Judgement passes(Item item) {
    return Judgement.of(item, written(item), Verdict.PASS, earlier(item));
  }

  /** What was written, each value in the item's own unit: a report prints that one after it. */
  private List<String> written(Item item) {
    String unit = unit(item);
    List<String> written = new ArrayList<>();
    for (Readings.Row row : attempts(item).rows()) {
      if (!row.undone()) {
        written.add(WrittenValue.inUnit(unit, row));
      }
    }
    return written;
  }

  /** The unit of its number, a UCUM code; null where it is no number. */
  static @Nullable String unit(Item item) {
    return item instanceof Item.Measured m
        ? m.scale().unit()
        : item instanceof Item.Recorded r ? r.unit() : null;
  }

  /** A note of the attempts before the last. */
  private List<Cause> earlier(Item item) {
    List<String> written = written(item);
    return written.size() < 2
        ? List.of()
        : List.of(
            of(Cause.Code.EARLIER_ATTEMPT, item)
                .at(attempts(item).rows().get(0), "reading")
                .number(BigDecimal.valueOf(written.size()), null)
                .note(WrittenValue.asWritten(unit(item), attempts(item).rows().get(0))));
  }

  // ---- what is not measured ----

  @Override
  public Judgement tick(Item.Tick tick) {
    Judgement early = early(tick, "tick");
    if (early != null) {
      return early;
    }
    Readings.Row row = attempts(tick).last();
    return row.reading().equals("yes")
        ? passes(tick)
        : unclear(tick, of(Cause.Code.NOT_TICKED, tick).at(row, "reading"));
  }

  @Override
  public Judgement choice(Item.Choice choice) {
    Judgement early = early(choice, "choice");
    if (early != null) {
      return early;
    }
    Readings.Row row = attempts(choice).last();
    if (!choice.options().contains(row.reading())) {
      return unclear(choice, of(Cause.Code.NO_OUTCOME, choice).at(row, "reading"));
    }
    if (choice.pass() == null || choice.pass().equals(row.reading())) {
      return passes(choice);
    }
    Cause other = of(Cause.Code.OTHER_OUTCOME, choice).at(row, "reading").note(choice.pass());
    return Judgement.of(choice, written(choice), Verdict.FAIL, List.of(other));
  }

  @Override
  public Judgement recorded(Item.Recorded recorded) {
    Judgement early = early(recorded, "record");
    if (early != null) {
      return early;
    } else if (recorded.unit() != null) {
      return number(recorded, recorded.unit());
    }
    Cause cause = unusable(recorded, attempts(recorded).last());
    return cause == null ? passes(recorded) : unclear(recorded, cause);
  }

  /** Why a text is no answer to what a blank asks for; null where it is one. */
  private @Nullable Cause unusable(Item.Recorded recorded, Readings.Row row) {
    return switch (Blank.of(recorded)) {
      case DATE -> calibration.ofDate(recorded, row);
      case DUE -> calibration.ofBlank(recorded);
      case NAME ->
          Blank.isFiller(row.reading()) ? of(Cause.Code.FILLER, recorded).at(row, "reading") : null;
      default -> null;
    };
  }

  private Judgement number(Item.Recorded recorded, String unit) {
    WrittenValue written = WrittenValue.of(recorded, unit, attempts(recorded).last());
    if (written.value() == null) {
      return unclear(recorded, Objects.requireNonNull(written.trouble()));
    }
    BigDecimal value = new BigDecimal(written.value().toPlain());
    Item.Accepts accepts = recorded.accepts();
    List<Cause> causes =
        accepts == null
            ? new ArrayList<>()
            : beyond(recorded, unit, accepts.lower(), accepts.upper(), written.value());
    Verdict verdict = causes.isEmpty() ? Verdict.PASS : Verdict.FAIL;
    causes.addAll(earlier(recorded));
    return Judgement.of(recorded, written(recorded), verdict, causes).value(value);
  }

  // ---- readings ----

  @Override
  public Judgement reading(Item.Reading reading) {
    Judgement early = early(reading, "reading");
    if (early != null) {
      return early;
    }
    WrittenValue value = WrittenValue.of(reading, attempts(reading).last());
    Rational read = value.value();
    if (read == null) {
      return unclear(reading, Objects.requireNonNull(value.trouble()));
    }
    List<Cause> outside = outside(reading, read);
    List<Cause> doubts = doubts(reading, read);
    if (outside.isEmpty() && !doubts.isEmpty()) {
      return unclear(reading, doubts.get(0));
    }
    outside.addAll(doubts);
    Evaluation known = Evaluation.of(reading, read, list.decision().coverage());
    return measured(reading, Real.of(read), outside, known);
  }

  /** Why a reading cannot pass, wherever it lies. */
  private List<Cause> doubts(Item.Reading reading, Rational read) {
    List<Cause> doubts = new ArrayList<>();
    Cause overdue = calibration.ofReading(reading);
    if (overdue != null) {
      doubts.add(overdue);
    }
    Readings.Row row = attempts(reading).last();
    wave.impossible(new DerivedValue.Part(reading, read), this::value).stream()
        .map(which -> of(Cause.Code.PEAK_BELOW_RMS, reading).at(row, "reading").note(which))
        .forEach(doubts::add);
    return doubts;
  }

  /** What is written of a reading; null where that cannot be told. */
  private @Nullable Rational value(Item.Reading reading) {
    return early(reading, "reading") == null
        ? WrittenValue.of(reading, attempts(reading).last()).value()
        : null;
  }

  /** The limits beyond which a value lies; null for a side that is open. */
  private List<Cause> beyond(
      Item item, String unit, @Nullable BigDecimal low, @Nullable BigDecimal high, Rational value) {
    List<Cause> beyond = new ArrayList<>();
    if (low != null && value.compareTo(Rational.of(low)) < 0) {
      beyond.add(limit(Cause.Code.BELOW_LIMIT, item, low, unit));
    }
    if (high != null && value.compareTo(Rational.of(high)) > 0) {
      beyond.add(limit(Cause.Code.ABOVE_LIMIT, item, high, unit));
    }
    return beyond;
  }

  private List<Cause> outside(Item.Reading reading, Rational read) {
    Item.Limits limits = reading.limits();
    List<Cause> outside = new ArrayList<>();
    if (limits != null) {
      String unit = reading.scale().unit();
      outside.addAll(beyond(reading, unit, limits.acceptLower(), limits.acceptUpper(), read));
      if (!outside.isEmpty() && inTolerance(limits, Real.of(read))) {
        outside.add(
            of(Cause.Code.INSIDE_TOLERANCE, reading).at(attempts(reading).last(), "reading"));
      }
    }
    return outside;
  }

  /** With the limit that it is held against, and what was written where anything was. */
  private Cause limit(Cause.Code code, Item item, BigDecimal limit, String unit) {
    Cause cause = of(code, item).number(limit, unit);
    return attempts(item).none() ? cause : cause.at(attempts(item).last(), "reading");
  }

  private static boolean inTolerance(Item.Limits limits, Real value) {
    return (limits.lower() == null || value.compareTo(real(limits.lower())) >= 0)
        && (limits.upper() == null || value.compareTo(real(limits.upper())) <= 0);
  }

  private static Real real(BigDecimal value) {
    return Real.of(Rational.of(value));
  }

  private Judgement measured(
      Item.Measured item, Real value, List<Cause> outside, Evaluation known) {
    List<Cause> causes = new ArrayList<>(outside);
    causes.addAll(earlier(item));
    BigDecimal coverage = list.decision().coverage();
    return new Judgement(
        item,
        written(item),
        outside.isEmpty() ? Verdict.PASS : Verdict.FAIL,
        shown(value, item.scale()),
        List.copyOf(causes),
        known.expanded(coverage),
        known.factor(coverage),
        known.freedom(),
        known.conformity(value.doubleValue(), item.limits()),
        List.of());
  }

  /** Exact where its digits end, else with two decimals more than its limits have. */
  private static BigDecimal shown(Real value, Item.Scale scale) {
    BigDecimal all = value.toDecimal(DIGITS, RoundingMode.HALF_EVEN).stripTrailingZeros();
    int decimals = Math.min(Math.max(all.scale(), scale.decimals()), scale.decimals() + 2);
    return all.setScale(decimals, RoundingMode.HALF_EVEN);
  }

  // ---- derived values ----

  /** Calculated from its parts; what is written for it is a control of the transcription. */
  @Override
  public Judgement derived(Item.Derived derived) {
    Judgement early = early(derived, "reading");
    if (early != null && early.verdict() != Verdict.NOT_DONE) {
      return early;
    }
    Map<String, DerivedValue.Part> parts = new LinkedHashMap<>();
    Cause doubt = null;
    for (Map.Entry<String, String> entry : derived.calculation().parts().entrySet()) {
      Item.Reading part = (Item.Reading) Objects.requireNonNull(byId.get(entry.getValue()));
      Judgement read = part.accept(this);
      if (read.verdict() == Verdict.NOT_DONE) {
        return early != null
            ? early
            : unclear(
                derived, of(Cause.Code.PART_NOT_READ, part).ofPart(derived.id(), entry.getKey()));
      }
      if (read.verdict() == Verdict.UNCLEAR) {
        doubt = read.causes().get(0).ofPart(derived.id(), entry.getKey());
        if (doubt.code() != Cause.Code.PEAK_BELOW_RMS) {
          return unclear(derived, doubt);
        }
      }
      Rational value = WrittenValue.of(part, attempts(part).last()).value();
      parts.put(entry.getKey(), new DerivedValue.Part(part, Objects.requireNonNull(value)));
    }
    Cause mixed = attemptsDiffer(derived, parts);
    if (mixed != null) {
      return unclear(derived, mixed);
    }
    try {
      Judgement judged = derived(derived, DerivedValue.of(derived, parts, factor()), parts);
      Cause late = doubt == null ? overdue(derived, parts) : doubt;
      return judged.verdict() == Verdict.PASS && late != null ? unclear(derived, late) : judged;
    } catch (ArithmeticException e) {
      return unclear(derived, of(Cause.Code.NOT_CALCULABLE, derived).note(e.getMessage()));
    }
  }

  /**
   * The cause where one part was read again and another was not, so that they are not of one state
   * of the generator; null where all are of the same attempt.
   */
  private @Nullable Cause attemptsDiffer(
      Item.Derived derived, Map<String, DerivedValue.Part> parts) {
    Map<String, Integer> numbers = new LinkedHashMap<>();
    parts.forEach((name, part) -> numbers.put(name, attempts(part.item()).rows().size()));
    if (numbers.values().stream().distinct().count() < 2) {
      return null;
    }
    String which =
        numbers.entrySet().stream()
            .map(n -> n.getKey() + " of attempt " + n.getValue())
            .collect(Collectors.joining(", "));
    return of(Cause.Code.ATTEMPTS_DIFFER, derived).note(which);
  }

  /** Of parts that all fail, so that none of them is unclear because of it. */
  private @Nullable Cause overdue(Item.Derived derived, Map<String, DerivedValue.Part> parts) {
    for (Map.Entry<String, DerivedValue.Part> part : parts.entrySet()) {
      Cause cause = calibration.ofReading(part.getValue().item());
      if (cause != null) {
        return cause.ofPart(derived.id(), part.getKey());
      }
    }
    return null;
  }

  /** By which a derived value's u is multiplied: that of its guard band, else of its U. */
  private Rational factor() {
    BigDecimal guard = list.decision().guard();
    return Rational.of(guard.signum() > 0 ? guard : list.decision().coverage());
  }

  private Judgement derived(
      Item.Derived derived, DerivedValue value, Map<String, DerivedValue.Part> parts) {
    BigDecimal shown = shown(value.value(), derived.scale());
    List<Cause> why = outside(derived, value);
    Judgement judged =
        measured(derived, value.value(), why, Evaluation.of(value)).effects(value.effects());
    if (judged.verdict() == Verdict.FAIL) {
      return judged;
    }
    if (value.value().signum() < 0 && !derived.scale().negative()) {
      return unclear(derived, of(Cause.Code.NEGATIVE, derived));
    }
    String reversed = PeakAndRms.reversed(derived, parts);
    if (reversed != null) {
      return unclear(derived, of(Cause.Code.PEAK_BELOW_RMS, derived).note(reversed));
    }
    boolean guarded = list.decision().guard().signum() > 0;
    if (guarded && value.variance() == null) {
      return unclear(derived, of(Cause.Code.UNCERTAINTY_UNKNOWN, derived));
    }
    Attempts written = attempts(derived);
    return written.none() || agrees(derived, written.last(), value.value())
        ? judged
        : unclear(
            derived,
            of(Cause.Code.OTHER_THAN_CALCULATED, derived)
                .at(written.last(), "reading")
                .number(shown, derived.scale().unit()));
  }

  private static boolean agrees(Item.Derived derived, Readings.Row row, Real value) {
    WrittenValue written = WrittenValue.of(derived, row);
    return written.value() != null
        && Real.of(written.value()).minus(value).abs().compareTo(real(derived.scale().resolution()))
            <= 0;
  }

  /**
   * Where a derived value lies outside its limits, moved inward by so many standard uncertainties:
   * (limit − value)² is compared with g²·u², so that no root is taken.
   */
  private List<Cause> outside(Item.Derived derived, DerivedValue value) {
    Item.Limits limits = derived.limits();
    List<Cause> why = new ArrayList<>();
    Real guard = Real.of(Evaluation.of(value).factor(list.decision().guard()));
    Real band = value.variance() == null ? Real.ZERO : value.variance().times(guard.times(guard));
    if (limits.lower() != null && beyond(value.value().minus(real(limits.lower())), band)) {
      boolean below = value.value().compareTo(real(limits.lower())) < 0;
      why.add(
          limit(
              below ? Cause.Code.BELOW_LIMIT : Cause.Code.GUARD_BAND,
              derived,
              limits.lower(),
              derived.scale().unit()));
    }
    if (limits.upper() != null && beyond(real(limits.upper()).minus(value.value()), band)) {
      boolean above = value.value().compareTo(real(limits.upper())) > 0;
      why.add(
          limit(
              above ? Cause.Code.ABOVE_LIMIT : Cause.Code.GUARD_BAND,
              derived,
              limits.upper(),
              derived.scale().unit()));
    }
    return why;
  }

  /** Whether a distance inward from a limit is less than the guard band, given as its square. */
  private static boolean beyond(Real inside, Real band) {
    return inside.signum() < 0 || inside.times(inside).compareTo(band) < 0;
  }
}
