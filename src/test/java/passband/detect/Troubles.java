package passband.detect;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import passband.detect.GeneratorModel.Delivered;
import passband.model.Device;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.Series;
import passband.model.Terminal;
import passband.quantity.Rational;
import passband.quantity.Units;
import passband.syntax.Expression;
import passband.syntax.LimitExpression;
import passband.syntax.Tree;

/** What each entry of the catalogue is on the models of a generator, a bench and a person. */
final class Troubles {
  private final SheetLines lines;
  private final Device device;

  /** By place, the tolerance of power below and above the nominal: what sizes are multiples of. */
  private final Map<String, double[]> tolerances = new LinkedHashMap<>();

  Troubles(SheetLines lines) {
    this.lines = lines;
    this.device = lines.plan().device();
    OutputEffects output = new OutputEffects(lines);
    for (SheetLine line : lines.output()) {
      double[] both = {output.tolerance(line, false), output.tolerance(line, true)};
      tolerances.putIfAbsent(Place.of(line).text(), both);
    }
  }

  Trouble of(Instance one) {
    String where = one.where();
    Fault.Size size = one.size();
    double value = size.value();
    return switch (one.fault().effect()) {
      case "gain" -> gain(one);
      case "zero" -> power(where, (d, r, ohms, good) -> good + value * greatest(d, r, ohms));
      case "bend" ->
          power(
              where,
              (d, r, ohms, good) ->
                  good * (1 - (1 - factor(d, -value, size)) * d.setting() / greatest(d, r)));
      case "voltage-limit" -> limited(where, value, true);
      case "current-limit" -> limited(where, value, false);
      case "step-down" -> power(where, (d, r, ohms, good) -> at(d, r, ohms, stepDown(d)));
      case "stuck-least" ->
          power(where, (d, r, ohms, good) -> at(d, r, ohms, r.leastSetting(d.mode())));
      case "stuck-greatest" -> power(where, (d, r, ohms, good) -> at(d, r, ohms, greatest(d, r)));
      case "other-scale" ->
          power(
              where.split(" as ")[0],
              (d, r, ohms, good) ->
                  good * most(device.mode(where.split(" as ")[1])) / most(d.mode()));
      case "fade" ->
          power(where, (d, r, ohms, good) -> good * (1 - (1 - factor(d, -value, size)) * d.on()));
      case "waveform" -> waveform(where.split(" as ")[0], device.mode(where.split(" as ")[1]));
      case "outlet-dead", "outlets-exchanged", "elsewhere" -> outlets(one);
      case "contact-dead" ->
          new Trouble() {
            @Override
            boolean works(Terminal contact) {
              return !contact.id().equals(where);
            }
          };
      case "without-contact" ->
          new Trouble() {
            @Override
            boolean runsAlone() {
              return true;
            }
          };
      case "above-limit", "no-value" -> limits(one);
      case "inhibited" ->
          new Trouble() {
            @Override
            boolean ignoresAlarm() {
              return true;
            }
          };
      case "intermittent" ->
          new Trouble() {
            @Override
            double failing() {
              return value;
            }
          };
      case "display" ->
          new Trouble() {
            @Override
            double displayed(Delivered one) {
              return factor(one, value, size);
            }
          };
      default -> Slips.of(one, lines);
    };
  }

  // ---- power ----

  private interface Power {
    double of(Delivered one, Ratings ratings, double ohms, double good);
  }

  private static boolean isAt(Delivered one, String where) {
    return List.of(one.modeName(), one.outletName(), one.place(), "all modes").contains(where)
        || where.equals("all modes");
  }

  private static Trouble power(String where, Power power) {
    return new Trouble() {
      @Override
      double power(Delivered one, double ohms, Ratings ratings) {
        double good = super.power(one, ohms, ratings);
        return isAt(one, where) ? power.of(one, ratings, ohms, good) : good;
      }
    };
  }

  private static double at(Delivered one, Ratings ratings, double ohms, double setting) {
    return ratings.power(one.outlet(), one.mode(), setting, ohms);
  }

  private static double most(Mode mode) {
    return mode.setting().highest().doubleValue();
  }

  private static double greatest(Delivered one, Ratings ratings) {
    return ratings.greatestSetting(one.outlet(), one.mode());
  }

  /** The power at the greatest setting: as set, else what is known of it. */
  private static double greatest(Delivered one, Ratings ratings, double ohms) {
    double most = greatest(one, ratings);
    return Ratings.setsPower(one.mode()) ? most : at(one, ratings, ohms, most);
  }

  /** By which factor the power is off at a size: of itself, or of the tolerance of its place. */
  private double factor(Delivered one, double value, Fault.Size size) {
    double[] both = tolerances.getOrDefault(one.place(), new double[2]);
    return 1 + (size.ofTolerance() ? value * both[value > 0 ? 1 : 0] : value);
  }

  private Trouble gain(Instance one) {
    Fault.Size size = one.size();
    ToDoubleFunction<Delivered> off = d -> factor(d, size.value(), size);
    return power(
        one.where(),
        (d, ratings, ohms, good) -> {
          boolean is =
              switch (one.fault().over()) {
                case "half" -> d.setting() > greatest(d, ratings) / 2;
                case "high-load" ->
                    d.mode().loads() != null && ohms > d.mode().loads().highest().doubleValue();
                default -> true;
              };
          return is ? good * off.applyAsDouble(d) : good;
        });
  }

  private static double stepDown(Delivered one) {
    Series scale = one.mode().setting();
    for (Series.Segment segment : scale == null ? List.<Series.Segment>of() : scale.segments()) {
      double from = segment.from().doubleValue();
      double to = segment.to().doubleValue();
      double step = segment.step() == null ? 0 : segment.step().doubleValue();
      boolean lower = one.setting() - step >= from - 1e-9 && one.setting() <= to + 1e-9;
      if (step > 0 && lower) {
        return one.setting() - step;
      }
    }
    return one.setting();
  }

  /** At the greatest setting into the rated load a generator reaches its voltage and current. */
  private static Trouble limited(String where, double share, boolean voltage) {
    return power(
        where,
        (d, ratings, ohms, good) -> {
          Series loads = d.mode().loads();
          if (loads == null || Double.isInfinite(ohms)) {
            return good;
          }
          Rational rated = voltage ? loads.highest() : loads.lowest();
          double at = rated.doubleValue();
          double most = greatest(d, ratings, at);
          return Math.min(good, share * share * most * (voltage ? at / ohms : ohms / at));
        });
  }

  // ---- the rest of the generator ----

  private static Trouble waveform(String place, Mode other) {
    return new Trouble() {
      @Override
      double peak(Delivered one, String quantity, double good, Ratings ratings) {
        double onSheet = ratings.limit(quantity + " of " + other.name().text());
        boolean told = onSheet > 0 || !quantity.equals("peak-voltage");
        double limit = told ? onSheet : peakOfProfile(other);
        return one.place().equals(place) && limit > 0
            ? limit * Math.sqrt(Math.min(1, one.setting() / most(other)))
            : good;
      }
    };
  }

  /** What a profile's line allows, in V; not a number where it has none. */
  private static double peakOfProfile(Mode mode) {
    for (Tree.QuantityLimit line : mode.limits()) {
      if (line.quantity().text().equals("peak-voltage")
          && line.limit() instanceof LimitExpression.AtMost most
          && most.upper() instanceof Expression.Literal literal) {
        return literal
            .amount()
            .number()
            .times(Units.find(literal.amount().unit().text()).factor())
            .doubleValue();
      }
    }
    return Double.NaN;
  }

  private Trouble outlets(Instance one) {
    String effect = one.fault().effect();
    List<Outlet> named = new ArrayList<>();
    for (String name : one.where().split(" and ")) {
      if (device.outlet(name) != null) {
        named.add(device.outlet(name));
      }
    }
    return new Trouble() {
      @Override
      @Nullable Outlet comesOut(@Nullable Outlet outlet) {
        if (outlet == null || !named.contains(outlet)) {
          return outlet;
        }
        return named.size() < 2 ? null : named.get(1 - named.indexOf(outlet));
      }

      @Override
      double elsewhere() {
        return effect.equals("elsewhere") ? one.size().value() : 0;
      }
    };
  }

  private static Trouble limits(Instance one) {
    String over = one.fault().over();
    String where = one.where();
    boolean never = one.fault().effect().equals("no-value");
    double times = one.size().value();
    return new Trouble() {
      @Override
      double other(String place, String quantity, double good, double limit) {
        return where.equals(place + " " + quantity) ? times * limit : good;
      }

      @Override
      boolean neverAlarms() {
        return never && over.equals("trip");
      }

      @Override
      double later(Outlet plate, double at, double limit) {
        return over.equals("trip") && where.startsWith(plate.name().text() + " ")
            ? times * limit / at
            : 1;
      }

      @Override
      double stops(String place, double good, double limit) {
        boolean here = over.equals("time") && where.startsWith(place);
        return here ? never ? Double.NaN : times * limit : good;
      }
    };
  }
}
