package passband.detect;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.limit.LimitMaker;
import passband.limit.LimitRequest;
import passband.limit.PointConditions;
import passband.limit.RowValues;
import passband.limit.Value;
import passband.model.Analyzer.LoadBank;
import passband.model.Series;
import passband.plan.Figure;
import passband.plan.OnTime;
import passband.plan.Point;
import passband.plan.WiredLoads;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Units;

/**
 * The cheapest row that would catch a fault: of the modes and outlets on the sheet, at the least,
 * the next, a tested and the greatest setting, into the rated load and those beside it on the dial.
 * Its limits are made as those of the row that it is like.
 */
final class Proposals {
  private final SheetLines lines;
  private final OutputEffects output;
  private final Kernel kernel;
  private final StepTimes times;
  private final Remedies remedies;
  private @Nullable List<Candidate> candidates;

  Proposals(SheetLines lines, Kernel kernel) {
    this.lines = lines;
    this.output = new OutputEffects(lines);
    this.kernel = kernel;
    this.times = new StepTimes(lines.plan());
    this.remedies = new Remedies(lines, kernel);
  }

  /** A row that is not on the sheet, or a tested one as it would stand in another mode. */
  private record Candidate(SheetLine line, Proposal proposal) {}

  /** The cheapest lines; null where none of those that are tried would catch it. */
  @Nullable Proposal of(Instance missed) {
    if (output.of(missed.fault(), missed.size()) == null) {
      return remedies.of(missed);
    }
    Candidate best = null;
    boolean fades = missed.fault().effect().equals("fade");
    for (Candidate one : fades ? fading() : candidates()) {
      if (best == null && catches(one, missed)) {
        best = one;
      }
    }
    return best == null ? null : best.proposal;
  }

  /**
   * What becomes of a fault. What keeps its tolerance at every row of the sheet is a fault all the
   * same where it does not elsewhere: at the least setting, the next one, a tested one or the
   * greatest, into a load that is tested. So a row more cannot make a sheet look worse.
   *
   * @param place of a mode and an outlet alone; null for all
   */
  Outcome outcome(Instance instance, Chance power, @Nullable Place place) {
    Outcome outcome = instance.outcome(power);
    return outcome == Outcome.INSIDE && isOutside(instance, place) ? Outcome.of(power) : outcome;
  }

  private boolean isOutside(Instance inside, @Nullable Place place) {
    if (output.of(inside.fault(), inside.size()) == null) {
      return false;
    }
    for (Candidate one : candidates()) {
      boolean asked = place == null || Place.of(one.line()).equals(place);
      Instance there =
          asked && isLoaded(one.line()) ? at(new OutputEffects(output, one.line()), inside) : null;
      if (there != null && there.changes().stream().anyMatch(Instance.Change::outside)) {
        return true;
      }
    }
    return false;
  }

  private boolean isLoaded(SheetLine line) {
    for (SheetLine other : lines.output()) {
      if (Place.of(other).equals(Place.of(line)) && Objects.equals(other.ohms(), line.ohms())) {
        return true;
      }
    }
    return false;
  }

  /** The same fault at a candidate; null where it does nothing there. */
  private static @Nullable Instance at(OutputEffects effects, Instance fault) {
    List<Instance> all = effects.of(fault.fault(), fault.size());
    for (Instance more : all == null ? List.<Instance>of() : all) {
      if (more.where().equals(fault.where()) && !more.changes().isEmpty()) {
        return more;
      }
    }
    return null;
  }

  private boolean catches(Candidate one, Instance missed) {
    Instance more = at(new OutputEffects(output, one.line()), missed);
    if (more == null) {
      return false;
    }
    List<Instance.Change> changes = new ArrayList<>(missed.changes());
    changes.addAll(more.changes());
    Instance both = new Instance(missed.fault(), missed.size(), missed.where(), changes);
    return both.outcome(both.failing(kernel)) == Outcome.CAUGHT && isCaughtAsResized(one, missed);
  }

  /** Where the row itself makes the sizes others: whether it catches the fault of that size too. */
  private boolean isCaughtAsResized(Candidate one, Instance missed) {
    OutputEffects resized = missed.size().ofTolerance() ? output.resizedBy(one.line()) : null;
    Instance whole = resized == null ? null : at(resized, missed);
    return whole == null || whole.outcome(whole.failing(kernel)) == Outcome.CAUGHT;
  }

  private List<Candidate> candidates() {
    List<Candidate> all = candidates;
    if (all == null) {
      all = new ArrayList<>();
      for (SheetLine like : likes().values()) {
        for (Rational setting : settings(like)) {
          for (Rational load : loads(like)) {
            if (!isThere(like, setting, load)) {
              add(like, setting, load, null, all);
            }
          }
        }
      }
      all.sort(Comparator.comparingDouble(one -> one.proposal().seconds()));
      candidates = all;
    }
    return all;
  }

  /** Rows with output on as long as the duty allows. */
  private List<Candidate> fading() {
    List<Candidate> all = new ArrayList<>();
    for (SheetLine like : likes().values()) {
      Rational longest = like.point().on().allowed();
      for (Rational setting : longest == null ? Set.<Rational>of() : settings(like)) {
        add(like, setting, Objects.requireNonNull(like.ohms(), "a load"), longest, all);
      }
    }
    all.sort(Comparator.comparingDouble(one -> one.proposal().seconds()));
    return all;
  }

  /** What a new row is like: of each place the first that nothing else is set or done for. */
  private Map<Place, SheetLine> likes() {
    Map<Place, SheetLine> likes = new LinkedHashMap<>();
    for (SheetLine line : lines.output()) {
      if (RowText.isPlain(line)) {
        likes.putIfAbsent(Place.of(line), line);
      }
    }
    return likes;
  }

  private Set<Rational> settings(SheetLine like) {
    Set<Rational> settings = new LinkedHashSet<>();
    Series scale = like.mode().setting();
    if (scale != null) {
      settings.add(scale.highest());
      settings.add(scale.lowest());
      Rational next = BenchEffects.beside(scale, scale.lowest(), true);
      if (next != null) {
        settings.add(next);
      }
    }
    for (SheetLine line : lines.output()) {
      if (Place.of(line).equals(Place.of(like)) && line.point().setting() != null) {
        settings.add(line.point().setting().si());
      }
    }
    return settings;
  }

  /** The rated load, and the next on the dial to either side. */
  private Set<Rational> loads(SheetLine like) {
    Set<Rational> loads = new LinkedHashSet<>();
    Rational set = like.ohms();
    if (set != null) {
      loads.add(set);
      LoadBank bank = bank(like, set);
      for (boolean up : new boolean[] {true, false}) {
        Rational beside = bank == null ? null : BenchEffects.beside(bank.values(), set, up);
        if (beside != null) {
          loads.add(beside);
        }
      }
    }
    return loads;
  }

  private @Nullable LoadBank bank(SheetLine like, Rational ohms) {
    return WiredLoads.bank(
        lines.plan().instruments(), like.run().setup(), like.point().mode(), like.outlet(), ohms);
  }

  private boolean isThere(SheetLine like, Rational setting, Rational load) {
    for (SheetLine line : lines.output()) {
      boolean there =
          Place.of(line).equals(Place.of(like))
              && line.point().setting() != null
              && setting.equals(line.point().setting().si())
              && Objects.equals(load, line.ohms());
      if (there) {
        return true;
      }
    }
    return false;
  }

  /**
   * @param onTime how long output is on, in s; null for as long as at the row that it is like
   */
  private void add(
      SheetLine like,
      Rational setting,
      Rational load,
      @Nullable Rational onTime,
      List<Candidate> all) {
    Figure was = like.point().setting();
    if (was == null) {
      return;
    }
    Figure set = new Figure(setting, was.unit());
    Figure ohms = new Figure(load, Units.of("ohm"));
    Limit limit = limit(like, set, ohms);
    if (limit == null) {
      return;
    }
    Point old = like.point();
    Point.Settings settings =
        new Point.Settings(
            set,
            ohms,
            old.loadAt(),
            null,
            old.activation(),
            null,
            old.otherLoads(),
            old.extras(),
            old.values(),
            old.also());
    OnTime on = onTime == null ? old.on() : new OnTime(onTime, old.on().needs(), old.on().duty());
    Point point =
        new Point(
            "proposed/" + Place.of(like).text() + "/" + set.id() + "/" + ohms.id(),
            old.outlet(),
            old.mode(),
            settings,
            old.steps(),
            onTime == null ? old.times() : new Point.Times(on, on.rest()),
            List.of(limit),
            List.of(),
            old.places(),
            old.span());
    String words =
        Place.of(like).text()
            + " at "
            + set.text()
            + " into "
            + ohms.text()
            + ", read as "
            + limit.quantity()
            + (onTime == null ? "" : " after " + new Figure(onTime, Units.of("s")).text());
    double seconds = times.more(like.run(), point);
    all.add(
        new Candidate(
            lines.line(like.run(), point, limit, SheetLine.Kind.OUTPUT),
            new Proposal(
                words,
                seconds,
                like.run().test().text(),
                false,
                RowText.test(like, set, ohms, onTime, lines))));
  }

  /** The limit as of the row that it is like, at another setting and load; null where none is. */
  private @Nullable Limit limit(SheetLine like, Figure setting, Figure load) {
    Limit old = like.limit();
    QuantityKind accepted =
        old.rule().quantity() == null ? null : QuantityKind.find(old.rule().quantity().text());
    String by = old.read().by();
    if (accepted == null || by == null) {
      return null;
    }
    PointConditions conditions =
        new PointConditions(
            "proposed",
            new PointConditions.Load(load.si(), null, bank(like, load.si()), like.point().span()),
            values(setting, load),
            like.point().mode(),
            List.of(),
            List.of(),
            like.point().span());
    Diagnostics unsaid = new Diagnostics();
    LimitMaker maker =
        new LimitMaker(lines.plan().instruments().in(by), lines.plan().decision(), unsaid);
    Limit limit =
        maker.limit(new LimitRequest(conditions, old.rule(), accepted, old.read().kind(), null));
    return unsaid.hasErrors() ? null : limit;
  }

  /** The columns of a row; null for one that it does not have. */
  static RowValues values(@Nullable Figure setting, @Nullable Figure load) {
    Map<String, Value> values = new LinkedHashMap<>();
    if (setting != null) {
      values.put("setting", Value.of(setting.si(), setting.unit().dimension()));
    }
    if (load != null) {
      values.put("load", Value.of(load.si(), load.unit().dimension()));
    }
    return new RowValues() {
      @Override
      public @Nullable Value value(String name) {
        return values.get(name);
      }

      @Override
      public Set<String> names() {
        return values.keySet();
      }
    };
  }
}
