package passband.detect;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.evidence.WrittenFormula;
import passband.limit.Limit;
import passband.limit.LimitMaker;
import passband.limit.LimitRequest;
import passband.limit.PointConditions;
import passband.limit.Uncertainty;
import passband.model.Accuracy;
import passband.model.Analyzer;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.Terminal;
import passband.plan.Contacts;
import passband.plan.Figure;
import passband.plan.Point;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Units;
import passband.syntax.Expression;
import passband.syntax.LimitExpression;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * What would catch a fault that is none of the output's power: a value that is worked out, a tick,
 * or one reading more in the same activation.
 */
final class Remedies {
  private static final int[] PERCENT = {5, 4, 3, 2, 8, 10};

  private final SheetLines lines;
  private final Kernel kernel;

  Remedies(SheetLines lines, Kernel kernel) {
    this.lines = lines;
    this.kernel = kernel;
  }

  /** The lines; null where none of those that are tried would catch it. */
  @Nullable Proposal of(Instance missed) {
    return switch (missed.fault().effect()) {
      case "load-step", "load-before" -> load(missed);
      case "mode-before" -> tick(missed, "The panel shows {mode}.");
      case "setting-before" -> tick(missed, "The display shows {setting}.");
      case "wider-range" -> range(missed);
      case "waveform" -> waveform(missed);
      case "above-limit", "no-value" -> more(missed);
      case "contact-dead" -> contact(missed);
      default -> null;
    };
  }

  private static Stage.@Nullable Run open(Instance missed) {
    for (Instance.Change change : missed.changes()) {
      if (RowText.isOpen(change.line().run())) {
        return change.line().run();
      }
    }
    return null;
  }

  private List<SheetLine> rows(Stage.Run of) {
    List<SheetLine> rows = new ArrayList<>(lines.output());
    rows.removeIf(line -> line.run().tree() != of.tree());
    return rows;
  }

  private long points(Stage.Run of) {
    return points(of, point -> true);
  }

  /** At how many of its rows a quantity is not read yet, for a calculation. */
  private long notReading(Stage.Run of, String quantity) {
    return points(
        of, point -> point.readings().stream().noneMatch(r -> r.quantity().equals(quantity)));
  }

  private long points(Stage.Run of, Predicate<Point> which) {
    return lines.plan().runs().stream()
        .filter(run -> run.tree() == of.tree())
        .mapToLong(run -> run.points().stream().filter(which).count())
        .sum();
  }

  /** How often a test is done: on each outlet, in each phase. */
  private long times(Stage.Run of) {
    return lines.plan().runs().stream().filter(run -> run.tree() == of.tree()).count();
  }

  // ---- a load worked out from voltage and current ----

  private @Nullable Proposal load(Instance missed) {
    Stage.Run run = open(missed);
    if (run == null) {
      return null;
    }
    for (int percent : PERCENT) {
      Proposal one = load(missed, run, percent);
      if (one != null) {
        return one;
      }
    }
    return tick(missed, "The load is set to {load}.");
  }

  private @Nullable Proposal load(Instance missed, Stage.Run run, int percent) {
    Rational least = null;
    String other = null;
    List<Reckoning> good = new ArrayList<>();
    List<Reckoning> values = new ArrayList<>();
    for (SheetLine line : rows(run)) {
      other = otherOf(line);
      Point.Reading reading = other == null ? null : reading(line.point(), other);
      Rational ohms = line.ohms();
      if (reading == null || ohms == null || line.point().readings().size() > 0) {
        return null;
      }
      least = least == null || ohms.compareTo(least) < 0 ? ohms : least;
      SheetLine more =
          new Unjudged(lines.plan())
              .reading(line.run(), line.point(), reading, SheetLine.Kind.OUTPUT, List.of(line));
      Criterion criterion = within(line, more, percent / 100.0);
      if (criterion == null) {
        return null;
      }
      good.add(of(criterion, line, line.good(), more, more.good()));
      for (Instance.Change change : missed.changes()) {
        if (change.line() == line && change.seen().hasValue()) {
          double ratio = change.seen().truth() / line.nominal();
          Observation moved = more.at(ratio == 0 ? 0 : more.nominal() / ratio);
          values.add(of(criterion, line, change.seen(), more, moved));
        }
      }
    }
    boolean sure =
        good.stream().allMatch(Reckoning::alwaysPasses)
            && values.stream().anyMatch(Reckoning::neverPasses);
    if (least == null || !sure) {
      return null;
    }
    Figure step = step(least.times(Rational.of(percent, 100)));
    String name = "dialled";
    return new Proposal(
        "in test "
            + run.test().text()
            + ": the load from voltage and current, within "
            + percent
            + " %",
        StepTimes.of("read") * points(run),
        run.test().text(),
        true,
        List.of(
            "derive "
                + name
                + " \"Load, from voltage and current\" = voltage / current, resolution "
                + RowText.amount(step),
            "accept " + name + " within " + percent + " % of load"));
  }

  /** A power of ten of which a distance has ten or more. */
  private static Figure step(Rational distance) {
    Rational step = Rational.ONE;
    while (step.times(Rational.of(12)).compareTo(distance) > 0) {
      step = step.over(Rational.TEN);
    }
    return new Figure(step, Units.of("ohm"));
  }

  private static @Nullable String otherOf(SheetLine line) {
    return switch (line.limit().quantity()) {
      case "current" -> "voltage";
      case "voltage" -> "current";
      default -> null;
    };
  }

  private static Reckoning of(
      Criterion criterion, SheetLine line, Observation seen, SheetLine more, Observation other) {
    boolean current = line.limit().quantity().equals("current");
    return new Reckoning(criterion, current ? List.of(other, seen) : List.of(seen, other));
  }

  /** Within a share of the load, with the guard band; null where nobody can tell that. */
  private @Nullable Criterion within(SheetLine line, SheetLine more, double share) {
    double ohms = line.ohms() == null ? 0 : line.ohms().doubleValue();
    Expression formula = new WrittenFormula("voltage / current").tree();
    Arithmetic arithmetic =
        formula == null ? null : Arithmetic.of(formula, List.of("voltage", "current"), Map.of());
    if (arithmetic == null) {
      throw new IllegalStateException("voltage over current");
    }
    boolean current = line.limit().quantity().equals("current");
    double guard = lines.plan().decision().guard().doubleValue();
    List<Criterion.SharedError> errors =
        WorkedOuts.errors(current ? List.of(more, line) : List.of(line, more));
    return errors == null && guard > 0
        ? null
        : new Criterion(
            new Criterion.Formula("voltage/current", arithmetic),
            ohms * (1 - share),
            ohms * (1 + share),
            true,
            guard,
            errors == null ? List.of() : errors);
  }

  /** A quantity that the one instrument reads that can; null where none can, or several. */
  private Point.@Nullable Reading reading(Point point, String quantity) {
    List<Analyzer> measuring = lines.plan().instruments().measuring(quantity);
    QuantityKind kind = QuantityKind.find(quantity);
    if (measuring.size() != 1 || kind == null) {
      return null;
    }
    Analyzer unit = measuring.get(0);
    Analyzer.Measure measure = unit.measure(quantity);
    Analyzer.Range widest = null;
    for (Analyzer.Range range : measure == null ? List.<Analyzer.Range>of() : measure.ranges()) {
      widest = widest == null || range.to().compareTo(widest.to()) > 0 ? range : widest;
    }
    Accuracy error = widest == null ? null : widest.error();
    if (widest == null || error == null) {
      return null;
    }
    return new Point.Reading(
        point.id() + "/" + quantity,
        quantity,
        kind.printed(),
        passband.quantity.Unit.ONE,
        widest.resolution(),
        new Uncertainty(
            error, widest.resolution(), Rational.ZERO, lines.plan().decision().coverage()),
        unit.role());
  }

  // ---- ticks ----

  /** A test has one block of each kind. */
  private static boolean has(Stage.Run run, Tree.Steps.When when) {
    for (Tree.Steps block : run.tree().steps()) {
      if (block.when() == when && block.replacing() == null) {
        return true;
      }
    }
    return false;
  }

  private @Nullable Proposal tick(Instance missed, String words) {
    Stage.Run run = open(missed);
    return run == null || has(run, Tree.Steps.When.EACH)
        ? null
        : new Proposal(
            "in test " + run.test().text() + ", at each row, a tick: “" + words + "”",
            StepTimes.of("answer") * points(run),
            run.test().text(),
            true,
            List.of("each {", "  confirm \"" + words + "\"", "}"));
  }

  private @Nullable Proposal range(Instance missed) {
    Stage.Run run = open(missed);
    return run == null || has(run, Tree.Steps.When.BEFORE)
        ? null
        : new Proposal(
            "before test " + run.test().text() + ", a tick called range-" + run.test().text(),
            StepTimes.of("answer") * times(run),
            run.test().text(),
            true,
            List.of(
                "before {",
                "  confirm range-"
                    + run.test().text()
                    + " \"The instrument chooses its range by itself.\"",
                "}"));
  }

  // ---- one reading more in the same activation ----

  private @Nullable Proposal waveform(Instance missed) {
    for (Instance.Change change : missed.changes()) {
      SheetLine line = change.line();
      Proposal one = RowText.isOpen(line.run()) ? more("peak-voltage", line.run()) : null;
      if (one != null) {
        Place place = Place.of(line);
        for (SheetLine row : rows(line.run())) {
          Limit limit = limit(row, "peak-voltage");
          double peak = limit == null ? Double.NaN : LimitEffects.peakOf(other(missed), row);
          if (limit != null && Place.of(row).equals(place) && isCaught(row, limit, peak)) {
            return one;
          }
        }
      }
    }
    return null;
  }

  /** The mode whose waveform is delivered: the last word of where. */
  private @Nullable Mode other(Instance missed) {
    String where = missed.where();
    return lines.plan().device().mode(where.substring(where.lastIndexOf(' ') + 1));
  }

  private @Nullable Proposal more(Instance missed) {
    String quantity =
        switch (missed.fault().over()) {
          case "peak" -> "peak-voltage";
          case "time" -> "time";
          default -> null;
        };
    if (quantity == null) {
      return null;
    }
    Set<Place> places = missed.places();
    for (Stage.Run run : lines.runs()) {
      Proposal one = RowText.isOpen(run) ? more(quantity, run) : null;
      for (SheetLine row : one == null ? List.<SheetLine>of() : rows(run)) {
        Limit limit = limit(row, quantity);
        boolean asked = places.isEmpty() || places.contains(Place.of(row));
        if (asked && limit != null && limit.exact().upper() != null) {
          double truth =
              missed.fault().effect().equals("no-value")
                  ? Double.NaN
                  : limit.exact().upper().doubleValue() * missed.size().value();
          if (isCaught(row, limit, truth)) {
            return one;
          }
        }
      }
    }
    return null;
  }

  private boolean isCaught(SheetLine row, Limit limit, double truth) {
    SheetLine line = lines.line(row.run(), row.point(), limit, SheetLine.Kind.PEAK);
    return kernel.failing(List.of(line.at(truth))).value() >= Outcome.SURE_ENOUGH;
  }

  /** A quantity from the device in a test; null where some row of it has no such limit. */
  private @Nullable Proposal more(String quantity, Stage.Run run) {
    List<SheetLine> rows = rows(run);
    for (SheetLine row : rows) {
      boolean there = row.point().limits().stream().anyMatch(l -> l.quantity().equals(quantity));
      if (there || limit(row, quantity) == null) {
        return null;
      }
    }
    return rows.isEmpty()
        ? null
        : new Proposal(
            "in test " + run.test().text() + ": accept " + quantity + " from device",
            StepTimes.of("read") * notReading(run, quantity),
            run.test().text(),
            true,
            List.of("accept " + quantity + " from device"));
  }

  /** What the profile states of a quantity at a row; null where it states nothing. */
  private @Nullable Limit limit(SheetLine row, String quantity) {
    List<Analyzer> measuring = lines.plan().instruments().measuring(quantity);
    QuantityKind kind = QuantityKind.find(quantity);
    if (measuring.size() != 1 || kind == null) {
      return null;
    }
    Point point = row.point();
    Tree.QuantityLimit bound = lines.plan().device().bound(row.outlet(), quantity);
    Tree.Accept rule =
        new Tree.Accept(
            null,
            new Word(quantity, point.span()),
            new LimitExpression.OfDevice(point.span()),
            null,
            null,
            point.span());
    PointConditions conditions =
        new PointConditions(
            "proposed",
            new PointConditions.Load(row.ohms(), point.termination(), null, point.span()),
            Proposals.values(point.setting(), point.load()),
            point.mode(),
            bound == null ? List.of() : List.of(bound),
            List.of(),
            point.span());
    LimitMaker maker = new LimitMaker(measuring.get(0), lines.plan().decision(), new Diagnostics());
    return maker.limit(new LimitRequest(conditions, rule, kind, kind, null));
  }

  // ---- a contact ----

  /** A row that activates by a contact that no row activates by, where a lead goes to it. */
  private @Nullable Proposal contact(Instance missed) {
    for (SheetLine like : missed.changes().isEmpty() ? lines.output() : List.<SheetLine>of()) {
      String by = contact(like, missed.where());
      Figure setting = like.point().setting();
      Figure load = like.point().load();
      boolean needs = like.limit().exact().lower() != null;
      if (by != null && RowText.isPlain(like) && setting != null && load != null && needs) {
        StepTimes times = new StepTimes(lines.plan());
        return new Proposal(
            Place.of(like).text()
                + " at "
                + setting.text()
                + " into "
                + load.text()
                + ", activated by "
                + by,
            times.more(like.run(), like.point()),
            like.run().test().text(),
            false,
            RowText.test(like, setting, load, null, by, lines));
      }
    }
    return null;
  }

  /** What a row calls a contact that its mode is activated by and that something closes. */
  private @Nullable String contact(SheetLine like, String wanted) {
    Outlet outlet = like.outlet();
    Setup setup = like.run().setup();
    for (Tree.Ref ref : like.mode().activateBy()) {
      Terminal contact = Contacts.named(lines.plan().device(), outlet, ref);
      boolean closes =
          contact != null
              && contact.id().equals(wanted)
              && setup != null
              && Contacts.closing(lines.plan().instruments(), setup, contact) != null;
      if (closes) {
        return ref.text();
      }
    }
    return null;
  }
}
