package passband.record;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import passband.judge.Trend;
import passband.judge.Verdict;

/**
 * The records of many generators put together.
 *
 * @param units those that are due first, of one day in order of device and serial number
 * @param models as-found failures by device
 * @param points as-found failures by point, the highest share first; without those that never
 *     failed
 * @param drifts of single points of single generators, those that leave their limits first
 * @param left files that are in no total, each with why
 */
public record Fleet(
    List<Unit> units,
    List<Rate> models,
    List<Rate> points,
    List<Drift> drifts,
    List<LeftOut> left) {
  /** A file that is in no total. */
  public record LeftOut(String file, String why) {}

  /**
   * A generator.
   *
   * @param visits in order of their dates
   * @param due when the next visit is due; the day of the last where that was not passed
   */
  public record Unit(String device, String serial, List<RecordSummary> visits, LocalDate due) {
    /** The last visit. */
    public RecordSummary last() {
      return visits.get(visits.size() - 1);
    }

    /** Whether the last visit was passed. */
    public boolean passed() {
      return hasPassed(last());
    }

    /** Whether it is overdue on a day. */
    public boolean overdue(LocalDate day) {
      return due.isBefore(day);
    }
  }

  /**
   * How often something failed as found.
   *
   * @param visits in which it was judged
   */
  public record Rate(String device, String what, int failed, int visits) {
    /** Between zero and one. */
    public double share() {
      return visits == 0 ? 0 : (double) failed / visits;
    }
  }

  /**
   * A point of a generator over its visits, with the same limits in all of them.
   *
   * @param inside how many days after the last visit the interval of the next reading stays inside
   *     the limits, at most {@link Trend#LONGEST}
   */
  public record Drift(
      String device, String serial, RecordSummary.Measured last, Trend trend, int inside) {
    /** The day of the last visit. */
    public LocalDate lastDay() {
      return trend.dates().get(trend.dates().size() - 1);
    }

    /** The day from which the next reading may be outside. */
    public LocalDate until() {
      return lastDay().plusDays(inside);
    }
  }

  /**
   * Puts records together; of two with the same readings the second is left out.
   *
   * @param left files that could not be read
   * @param intervalDays from one visit to the next
   */
  public static Fleet of(List<RecordSummary> records, List<LeftOut> left, long intervalDays) {
    List<LeftOut> out = new ArrayList<>(left);
    Map<String, RecordSummary> seen = new HashMap<>();
    Map<String, List<RecordSummary>> byUnit = new TreeMap<>();
    for (RecordSummary one : records) {
      RecordSummary before = seen.putIfAbsent(one.readings(), one);
      if (before != null) {
        out.add(new LeftOut(one.file(), "the same readings are in " + before.file()));
      } else {
        byUnit
            .computeIfAbsent(one.visit().device() + "\n" + one.serial(), k -> new ArrayList<>())
            .add(one);
      }
    }
    List<Unit> units = new ArrayList<>();
    for (List<RecordSummary> visits : byUnit.values()) {
      visits.sort(Comparator.comparing(RecordSummary::date).thenComparing(RecordSummary::file));
      RecordSummary last = visits.get(visits.size() - 1);
      units.add(
          new Unit(
              last.visit().device(),
              last.serial(),
              List.copyOf(visits),
              hasPassed(last) ? last.date().plusDays(intervalDays) : last.date()));
    }
    out.sort(Comparator.comparing(LeftOut::file));
    units.sort(Comparator.comparing(Unit::due));
    return new Fleet(units, models(units), points(units), drifts(units), out);
  }

  private static boolean hasPassed(RecordSummary visit) {
    return visit.overall().equals(Verdict.PASS.word());
  }

  private static List<Rate> models(List<Unit> units) {
    Map<String, int[]> counts = new TreeMap<>();
    for (Unit unit : units) {
      for (RecordSummary visit : unit.visits()) {
        int[] count = counts.computeIfAbsent(unit.device(), k -> new int[2]);
        count[0] += visit.failedAsFound().isEmpty() ? 0 : 1;
        count[1]++;
      }
    }
    List<Rate> rates = new ArrayList<>();
    counts.forEach((device, count) -> rates.add(new Rate(device, "", count[0], count[1])));
    return rates;
  }

  private static List<Rate> points(List<Unit> units) {
    Map<String, Map<String, int[]>> counts = new TreeMap<>();
    for (Unit unit : units) {
      Map<String, int[]> of = counts.computeIfAbsent(unit.device(), k -> new LinkedHashMap<>());
      for (RecordSummary visit : unit.visits()) {
        List<String> bad = visit.failedAsFound();
        for (RecordSummary.Measured value : visit.values()) {
          if (asFound(visit, value)) {
            int[] count = of.computeIfAbsent(value.id(), k -> new int[2]);
            count[0] += bad.contains(value.id()) ? 1 : 0;
            count[1]++;
          }
        }
      }
    }
    List<Rate> rates = new ArrayList<>();
    counts.forEach(
        (device, of) ->
            of.forEach(
                (id, count) -> {
                  if (count[0] > 0) {
                    rates.add(new Rate(device, id, count[0], count[1]));
                  }
                }));
    rates.sort(Comparator.comparingDouble(Rate::share).reversed());
    return rates;
  }

  /** Read before anything was adjusted. */
  private static boolean asFound(RecordSummary visit, RecordSummary.Measured value) {
    List<String> phases = visit.visit().phases();
    return value.phase() == null || phases.isEmpty() || value.phase().equals(phases.get(0));
  }

  private static List<Drift> drifts(List<Unit> units) {
    List<Drift> drifts = new ArrayList<>();
    for (Unit unit : units) {
      Map<String, List<RecordSummary>> visits = new LinkedHashMap<>();
      Map<String, List<RecordSummary.Measured>> values = new LinkedHashMap<>();
      for (RecordSummary visit : unit.visits()) {
        for (RecordSummary.Measured value : visit.values()) {
          if (asFound(visit, value)) {
            visits.computeIfAbsent(value.id(), k -> new ArrayList<>()).add(visit);
            values.computeIfAbsent(value.id(), k -> new ArrayList<>()).add(value);
          }
        }
      }
      values.forEach(
          (id, of) -> {
            Drift drift = drift(unit, visits.getOrDefault(id, List.of()), of);
            if (drift != null) {
              drifts.add(drift);
            }
          });
    }
    drifts.sort(Comparator.comparing(Drift::until));
    return drifts;
  }

  /** Null with fewer than three readings to the limits of the last. */
  private static @Nullable Drift drift(
      Unit unit, List<RecordSummary> visits, List<RecordSummary.Measured> values) {
    RecordSummary.Measured last = values.get(values.size() - 1);
    List<LocalDate> dates = new ArrayList<>();
    List<Double> readings = new ArrayList<>();
    for (int i = 0; i < values.size(); i++) {
      if (sameMeaning(values.get(i), last)) {
        dates.add(visits.get(i).date());
        readings.add(values.get(i).value());
      }
    }
    Trend trend = Trend.of(dates, readings, last.lower(), last.upper());
    return trend == null || !trend.hasInterval()
        ? null
        : new Drift(
            unit.device(),
            unit.serial(),
            last,
            trend,
            trend.daysInside(dates.get(dates.size() - 1)));
  }

  private static boolean sameMeaning(RecordSummary.Measured one, RecordSummary.Measured other) {
    return one.unit().equals(other.unit())
        && Double.compare(one.lower(), other.lower()) == 0
        && Double.compare(one.upper(), other.upper()) == 0;
  }

  /**
   * The visits in which an instrument was used, in order of their dates.
   *
   * @param serial of the instrument, in any case
   * @param from the first day; null for no bound, likewise {@code to}, the last day
   */
  public List<RecordSummary> using(
      String serial, @Nullable LocalDate from, @Nullable LocalDate to) {
    List<RecordSummary> found = new ArrayList<>();
    for (Unit unit : units) {
      for (RecordSummary visit : unit.visits()) {
        boolean early = from != null && visit.date().isBefore(from);
        boolean late = to != null && visit.date().isAfter(to);
        boolean used = visit.instruments().stream().anyMatch(one -> same(serial, one.serial()));
        if (used && !early && !late) {
          found.add(visit);
        }
      }
    }
    found.sort(Comparator.comparing(RecordSummary::date).thenComparing(RecordSummary::file));
    return found;
  }

  /** The serial numbers of all instruments, in order. */
  public SortedSet<String> instruments() {
    SortedSet<String> serials = new TreeSet<>();
    for (Unit unit : units) {
      for (RecordSummary visit : unit.visits()) {
        for (UsedInstrument one : visit.instruments()) {
          if (one.serial() != null) {
            serials.add(one.serial().strip());
          }
        }
      }
    }
    return serials;
  }

  private static boolean same(String asked, @Nullable String written) {
    return written != null && asked.strip().equalsIgnoreCase(written.strip());
  }
}
