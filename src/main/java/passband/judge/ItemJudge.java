package passband.judge;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
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
  private final Map<String, Item> byId = new HashMap<>();

  ItemJudge(ItemList list, Map<String, Attempts> attempts, Applicability applicability) {
    this.list = list;
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
          ? Judgement.of(item, List.of(), Verdict.NOT_APPLICABLE, "")
          : unclear(item, "recorded although it does not apply");
    }
    if (written.trouble() != null) {
      return unclear(item, written.trouble());
    }
    if (written.none()) {
      return Judgement.of(item, List.of(), Verdict.NOT_DONE, "");
    }
    String given = written.last().kind();
    return given.isEmpty()
            || given.equals(kind)
            || given.equals("derived") && item instanceof Item.Derived
        ? null
        : unclear(item, "recorded as a " + given + ", but it is a " + kind);
  }

  private Judgement unclear(Item item, String why) {
    return Judgement.of(item, written(item), Verdict.UNCLEAR, why);
  }

  private Judgement said(Item item, boolean passes, String why) {
    return Judgement.of(
        item, written(item), passes ? Verdict.PASS : Verdict.FAIL, passes ? earlier(item) : why);
  }

  /** What was written, each value in the item's own unit: a report prints that one after it. */
  private List<String> written(Item item) {
    String unit =
        item instanceof Item.Measured m
            ? m.scale().unit()
            : item instanceof Item.Recorded r ? r.unit() : null;
    List<String> written = new ArrayList<>();
    for (Readings.Row row : attempts(item).rows()) {
      if (!row.undone()) {
        written.add(WrittenValue.inUnit(unit, row));
      }
    }
    return written;
  }

  /** A note of the attempts before the last. */
  private String earlier(Item item) {
    List<String> written = written(item);
    return written.size() < 2
        ? ""
        : "attempt " + written.size() + ", the first was " + written.get(0);
  }

  // ---- what is not measured ----

  @Override
  public Judgement tick(Item.Tick tick) {
    Judgement early = early(tick, "tick");
    if (early != null) {
      return early;
    }
    String value = attempts(tick).last().reading();
    return value.equals("yes")
        ? said(tick, true, "")
        : unclear(tick, "'" + value + "' is not 'yes'");
  }

  @Override
  public Judgement choice(Item.Choice choice) {
    Judgement early = early(choice, "choice");
    if (early != null) {
      return early;
    }
    String value = attempts(choice).last().reading();
    if (!choice.options().contains(value)) {
      return unclear(choice, "'" + value + "' is not one of the outcomes");
    }
    boolean passes = choice.pass() == null || choice.pass().equals(value);
    return said(choice, passes, "only '" + choice.pass() + "' passes");
  }

  @Override
  public Judgement recorded(Item.Recorded recorded) {
    Judgement early = early(recorded, "record");
    return early != null ? early : said(recorded, true, "");
  }

  // ---- readings ----

  @Override
  public Judgement reading(Item.Reading reading) {
    Judgement early = early(reading, "reading");
    if (early != null) {
      return early;
    }
    WrittenValue value = WrittenValue.of(reading.scale(), attempts(reading).last());
    Rational read = value.value();
    if (read == null) {
      return unclear(reading, value.why());
    }
    Item.Limits limits = reading.limits();
    List<String> why = new ArrayList<>();
    if (limits != null) {
      BigDecimal low = limits.acceptLower();
      BigDecimal high = limits.acceptUpper();
      if (low != null && read.compareTo(Rational.of(low)) < 0) {
        why.add("below " + low.toPlainString());
      }
      if (high != null && read.compareTo(Rational.of(high)) > 0) {
        why.add("above " + high.toPlainString());
      }
      if (!why.isEmpty() && inTolerance(limits, Real.of(read))) {
        why.add("inside the tolerance, outside the guard band");
      }
    }
    double coverage = list.decision().coverage().doubleValue();
    double standard = Budget.standard(reading, read.doubleValue(), coverage);
    return measured(reading, Real.of(read), why, standard);
  }

  private static boolean inTolerance(Item.Limits limits, Real value) {
    return (limits.lower() == null || value.compareTo(real(limits.lower())) >= 0)
        && (limits.upper() == null || value.compareTo(real(limits.upper())) <= 0);
  }

  private static Real real(BigDecimal value) {
    return Real.of(Rational.of(value));
  }

  private Judgement measured(Item.Measured item, Real value, List<String> why, double standard) {
    boolean passes = why.isEmpty();
    String earlier = earlier(item);
    if (!earlier.isEmpty()) {
      why.add(earlier);
    }
    Item.Limits limits = item.limits();
    return new Judgement(
        item,
        written(item),
        passes ? Verdict.PASS : Verdict.FAIL,
        shown(value, item.scale()),
        String.join("; ", why),
        standard * list.decision().coverage().doubleValue(),
        limits == null || Double.isNaN(standard)
            ? Double.NaN
            : Budget.conformity(
                value.doubleValue(), doubled(limits.lower()), doubled(limits.upper()), standard));
  }

  private static @Nullable Double doubled(@Nullable BigDecimal value) {
    return value == null ? null : value.doubleValue();
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
    Map<String, DerivedValue.Part> parts = new HashMap<>();
    for (Map.Entry<String, String> entry : derived.calculation().parts().entrySet()) {
      Item.Reading part = (Item.Reading) Objects.requireNonNull(byId.get(entry.getValue()));
      Judgement read = part.accept(this);
      if (read.verdict() == Verdict.NOT_DONE) {
        return early != null
            ? early
            : unclear(derived, entry.getKey() + ", from which it is calculated, has no reading");
      }
      if (read.verdict() == Verdict.UNCLEAR) {
        return unclear(derived, entry.getKey() + ": " + read.why());
      }
      Rational value = WrittenValue.of(part.scale(), attempts(part).last()).value();
      if (value == null) {
        return unclear(derived, entry.getKey() + ": its value is unknown");
      }
      parts.put(entry.getKey(), new DerivedValue.Part(part, value));
    }
    try {
      return derived(derived, DerivedValue.of(derived, parts));
    } catch (ArithmeticException e) {
      return unclear(derived, "it cannot be calculated: " + e.getMessage());
    }
  }

  private Judgement derived(Item.Derived derived, DerivedValue value) {
    BigDecimal shown = shown(value.value(), derived.scale());
    List<String> why = outside(derived, value);
    Judgement judged =
        measured(
            derived,
            value.value(),
            why,
            value.variance() == null ? Double.NaN : Math.sqrt(value.variance().doubleValue()));
    if (judged.verdict() == Verdict.FAIL) {
      return judged;
    }
    boolean guarded = list.decision().guard().signum() > 0;
    if (guarded && value.variance() == null) {
      return unclear(derived, "the uncertainty of its parts is not known");
    }
    Attempts written = attempts(derived);
    return written.none() || agrees(derived, written.last(), value.value())
        ? judged
        : unclear(
            derived,
            "recorded as "
                + written.last().reading()
                + ", but calculated as "
                + shown.toPlainString());
  }

  private static boolean agrees(Item.Derived derived, Readings.Row row, Real value) {
    WrittenValue written = WrittenValue.of(derived.scale(), row);
    return written.value() != null
        && Real.of(written.value()).minus(value).abs().compareTo(real(derived.scale().resolution()))
            <= 0;
  }

  /**
   * Where a derived value lies outside its limits, moved inward by so many standard uncertainties:
   * (limit − value)² is compared with g²·u², so that no root is taken.
   */
  private List<String> outside(Item.Derived derived, DerivedValue value) {
    Item.Limits limits = derived.limits();
    List<String> why = new ArrayList<>();
    Real guard = real(list.decision().guard());
    Real band = value.variance() == null ? Real.ZERO : value.variance().times(guard.times(guard));
    if (limits.lower() != null && beyond(value.value().minus(real(limits.lower())), band)) {
      boolean below = value.value().compareTo(real(limits.lower())) < 0;
      why.add((below ? "below " : "in the guard band of ") + limits.lower().toPlainString());
    }
    if (limits.upper() != null && beyond(real(limits.upper()).minus(value.value()), band)) {
      boolean above = value.value().compareTo(real(limits.upper())) > 0;
      why.add((above ? "above " : "in the guard band of ") + limits.upper().toPlainString());
    }
    return why;
  }

  /** Whether a distance inward from a limit is less than the guard band, given as its square. */
  private static boolean beyond(Real inside, Real band) {
    return inside.signum() < 0 || inside.times(inside).compareTo(band) < 0;
  }
}
