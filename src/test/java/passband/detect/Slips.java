package passband.detect;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiPredicate;
import org.jspecify.annotations.Nullable;
import passband.model.Analyzer;
import passband.model.Analyzer.LoadBank;
import passband.model.Terminal;
import passband.plan.Act;
import passband.plan.Move;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;

/** What somebody does otherwise than the sheet has it, and what an instrument does. */
final class Slips {
  private Slips() {}

  static Trouble of(Instance one, SheetLines lines) {
    String where = one.where();
    double value = one.size().value();
    return switch (one.fault().effect()) {
      case "load-step" -> loadStep(one, lines, value > 0);
      case "load-before" -> omits(where, Act.SetLoad.class);
      case "setting-before" -> omits(where, Act.Adjust.class);
      case "mode-before" -> omits(where, Act.Select.class);
      case "lead-jack", "lead-missing", "link-missing" -> lead(one, lines);
      case "error-edge" ->
          new Trouble() {
            @Override
            double edge() {
              return value;
            }
          };
      case "error-scale" ->
          new Trouble() {
            @Override
            double off() {
              return value;
            }
          };
      case "wider-range" ->
          new Trouble() {
            @Override
            boolean turnsRange(Stage.Run run) {
              return run.id().equals(where);
            }

            @Override
            Analyzer.Range range(
                Stage.Run run, Analyzer.Range own, Analyzer.@Nullable Measure measure) {
              Analyzer.Range wider = own;
              if (!turnsRange(run)) {
                return own;
              }
              for (Analyzer.Range range : measure == null ? List.of(own) : measure.ranges()) {
                boolean above = range.to().compareTo(own.to()) > 0;
                boolean nearer = wider == own || range.to().compareTo(wider.to()) < 0;
                wider = above && nearer ? range : wider;
              }
              return wider;
            }
          };
      case "transposed" -> writes(where, (item, shown, visit) -> transposed(shown, visit));
      case "tenfold" -> writes(where, (item, shown, visit) -> shown * value);
      case "repeated" ->
          writes(
              where,
              (item, shown, visit) ->
                  item.above() == null
                      ? shown
                      : visit.shown(item.above())
                          * item.above().range().step()
                          / item.range().step());
      case "nominal" ->
          writes(
              where,
              (item, shown, visit) -> {
                return Math.floor(item.line().nominal() / item.range().step() + 0.5);
              });
      case "omitted" -> writes(where, (item, shown, visit) -> Double.NaN);
      default -> throw new IllegalArgumentException(one.fault().effect());
    };
  }

  // ---- steps ----

  private static Trouble omits(String where, Class<? extends Act> step) {
    return new Trouble() {
      @Override
      @Nullable Act act(Point point, Act act) {
        return point.id().equals(where) && step.isInstance(act) ? null : act;
      }
    };
  }

  private static Trouble loadStep(Instance one, SheetLines lines, boolean up) {
    BiPredicate<Point, Act> is =
        (point, act) ->
            lines.all().stream()
                .anyMatch(
                    line ->
                        line.point() == point
                            && point.mode() != null
                            && line.placeAndLoad().equals(one.where()));
    return new Trouble() {
      @Override
      @Nullable Act act(Point point, Act act) {
        if (!(act instanceof Act.SetLoad set) || set.load() == null || !is.test(point, act)) {
          return act;
        }
        Rational other = null;
        for (LoadBank bank : lines.plan().instruments().in(set.unit().role()).loads()) {
          other = BenchEffects.beside(bank.values(), set.load().si(), up);
        }
        return other == null
            ? act
            : new Act.SetLoad(set.unit(), new passband.plan.Figure(other, set.load().unit()), null);
      }
    };
  }

  // ---- leads ----

  private static Trouble lead(Instance one, SheetLines lines) {
    String lead = one.where().substring(one.where().lastIndexOf(' ') + 1);
    String run = one.where().substring(0, one.where().lastIndexOf(':'));
    boolean missing = !one.fault().effect().equals("lead-jack");
    return new Trouble() {
      /** Where the lead's end ought to be, and where it is. */
      private Terminal wanted;

      private Terminal taken;

      @Override
      void move(BenchModel bench, Stage.Run at, Move move) {
        boolean own = move.lead().name().text().equals(lead);
        if (own && move.kind() != Move.Kind.REMOVE && at.id().equals(run)) {
          wrongly(bench, move);
        } else if (own && taken != null && wanted.same(move.from())) {
          bench.move(new Move(move.kind(), move.lead(), taken, move.to(), move.at()));
        } else {
          bench.move(move);
        }
      }

      private void wrongly(BenchModel bench, Move move) {
        if (missing) {
          bench.forget(move);
          return;
        }
        boolean first = !move.to().onAnalyzer();
        wanted = first ? move.from() : move.to();
        taken = next(wanted, lines);
        Terminal from = first ? taken : move.from();
        Terminal to = first ? move.to() : taken;
        bench.move(new Move(move.kind(), move.lead(), from, to, move.at()));
      }
    };
  }

  private static @Nullable Terminal next(Terminal end, SheetLines lines) {
    for (Analyzer unit : lines.plan().instruments().units()) {
      List<Terminal> same = new ArrayList<>(unit.terminals());
      same.removeIf(terminal -> terminal.kind() != end.kind());
      for (int i = 0; i < same.size(); i++) {
        if (same.get(i).same(end)) {
          return same.size() < 2 ? null : same.get((i + 1) % same.size());
        }
      }
    }
    return null;
  }

  // ---- writing ----

  private interface Written {
    double of(Working.Item item, double shown, Working.Visit visit);
  }

  private static Trouble writes(String where, Written written) {
    return new Trouble() {
      @Override
      double written(Working.Item item, double shown, Working.Visit visit) {
        return item.line().limit().id().equals(where) ? written.of(item, shown, visit) : shown;
      }
    };
  }

  /** One exchange of neighbouring digits that differ, by chance. */
  private static double transposed(double shown, Working.Visit visit) {
    String digits = Long.toString(Math.round(Math.abs(shown)));
    List<String> others = new ArrayList<>();
    for (int i = 0; i + 1 < digits.length(); i++) {
      if (digits.charAt(i) != digits.charAt(i + 1)) {
        others.add(
            digits.substring(0, i)
                + digits.charAt(i + 1)
                + digits.charAt(i)
                + digits.substring(i + 2));
      }
    }
    return others.isEmpty()
        ? shown
        : Double.parseDouble(others.get(visit.random().nextInt(others.size())));
  }
}
