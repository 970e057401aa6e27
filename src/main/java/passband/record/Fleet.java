package passband.record;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.BinaryOperator;
import org.jspecify.annotations.Nullable;
import passband.evidence.Blank;
import passband.judge.Trend;
import passband.judge.Verdict;

/**
 * The records of many generators put together.
 *
 * @param units those that are due first, of one day in order of device and serial number; a
 *     generator once for each procedure that it was visited by
 * @param models as-found failures by device
 * @param points as-found failures by point, the highest share first; without those that never
 *     failed
 * @param drifts of single points of single generators, those that leave their limits first
 * @param left files that are in no total, each with why
 * @param doubts what may be wrong in the totals, a sentence each
 */
public record Fleet(
    List<Unit> units,
    List<Rate> models,
    List<Rate> points,
    List<Drift> drifts,
    List<LeftOut> left,
    List<String> doubts) {
  /** A file that is in no total. */
  public record LeftOut(String file, String why) {}

  /**
   * A generator, as far as one procedure visits it: what another procedure finds says nothing of
   * it.
   *
   * @param visits in order of their dates; of one day the worst is the last, since nothing says
   *     which it was
   * @param due when the next visit is due; the day of the last where that was not passed
   */
  public record Unit(String device, String serial, List<RecordSummary> visits, LocalDate due) {
    /** The last visit. */
    public RecordSummary last() {
      return visits.get(visits.size() - 1);
    }

    /** Tells it from every other. */
    public String key() {
      return Fleet.unit(last());
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
   * @param what the sheet of the last visit calls the point; empty for a whole generator
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
   * @param name what the sheet of the last of them calls it
   * @param inside how many days after the last visit the interval of the next reading stays inside
   *     the limits, at most {@link Trend#LONGEST}
   */
  public record Drift(
      Unit unit, RecordSummary.Measured last, String name, Trend trend, int inside) {
    /** The day of the last visit. */
    public LocalDate lastDay() {
      return trend.dates().get(trend.dates().size() - 1);
    }

    /** Whether the last reading was outside already. */
    public boolean isOutside() {
      return last.value() < last.lower() || last.value() > last.upper();
    }

    /** The day from which the next reading may be outside. */
    public LocalDate until() {
      return lastDay().plusDays(inside);
    }
  }

  /** Those that were not passed come first, so that none of them is left out for one that was. */
  private static final Comparator<RecordSummary> WORST_FIRST =
      Comparator.comparing(Fleet::hasPassed).thenComparing(RecordSummary::file);

  private static final Comparator<RecordSummary> BY_DAY =
      Comparator.comparing(RecordSummary::date).thenComparing(WORST_FIRST.reversed());

  /**
   * Puts records together; of two with the same readings one is left out, and so is one of a day
   * that is yet to come.
   *
   * @param left files that could not be read
   * @param intervalDays from one visit to the next
   * @param today the day as of which it is
   */
  public static Fleet of(
      List<RecordSummary> records, List<LeftOut> left, long intervalDays, LocalDate today) {
    List<LeftOut> out = new ArrayList<>(left);
    Map<Object, RecordSummary> seen = new HashMap<>();
    Map<String, List<RecordSummary>> byUnit = new TreeMap<>();
    List<RecordSummary> sorted = new ArrayList<>(records);
    sorted.sort(WORST_FIRST);
    for (RecordSummary one : sorted) {
      RecordSummary before = seen.putIfAbsent(one.readings(), one);
      RecordSummary like = one.values().isEmpty() ? null : seen.putIfAbsent(Contents.of(one), one);
      if (before != null || like != null) {
        out.add(left(one, before, like));
      } else if (one.date().isAfter(today)) {
        out.add(new LeftOut(one.file(), "its date " + one.date() + " is after " + today));
      } else {
        byUnit.computeIfAbsent(unit(one), k -> new ArrayList<>()).add(one);
      }
    }
    List<Unit> units = new ArrayList<>();
    for (List<RecordSummary> visits : byUnit.values()) {
      visits.sort(BY_DAY);
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
    return new Fleet(units, models(units), points(units), drifts(units), out, doubts(units));
  }

  /** What makes two records of one day one visit, however their readings were saved. */
  private record Contents(String unit, LocalDate date, List<RecordSummary.Measured> values) {
    static Contents of(RecordSummary one) {
      return new Contents(Fleet.unit(one), one.date(), one.values());
    }
  }

  /** The same for all visits by one procedure to one generator. */
  private static String unit(RecordSummary one) {
    return generator(one) + "\n" + one.visit().procedure();
  }

  private static String generator(RecordSummary one) {
    return one.visit().device() + "\n" + SerialNumber.key(one.serial());
  }

  private static LeftOut left(
      RecordSummary one, @Nullable RecordSummary readings, @Nullable RecordSummary values) {
    RecordSummary kept = Objects.requireNonNullElse(readings, Objects.requireNonNull(values));
    String other =
        kept.overall().equals(one.overall())
            ? ""
            : ", which says '" + kept.overall() + "', this '" + one.overall() + "': verify both";
    return new LeftOut(
        one.file(),
        (readings != null ? "the same readings are in " : "the same values of the same day are in ")
            + kept.file()
            + other);
  }

  /** How many there are, however many procedures visit each. */
  public int generators() {
    return (int) units.stream().map(unit -> generator(unit.last())).distinct().count();
  }

  /** Serial numbers that may be the same one. */
  private static List<String> doubts(List<Unit> units) {
    Map<String, SortedSet<String>> alike = new TreeMap<>();
    Map<String, Set<String>> keys = new HashMap<>();
    for (Unit unit : units) {
      String bare = unit.device() + " " + SerialNumber.bare(unit.serial());
      alike.computeIfAbsent(bare, k -> new TreeSet<>()).add("'" + unit.serial() + "'");
      keys.computeIfAbsent(bare, k -> new HashSet<>()).add(SerialNumber.key(unit.serial()));
    }
    List<String> doubts = new ArrayList<>();
    for (Unit unit : units) {
      String bare = unit.device() + " " + SerialNumber.bare(unit.serial());
      SortedSet<String> written = alike.remove(bare);
      if (written != null && keys.getOrDefault(bare, Set.of()).size() > 1) {
        doubts.add(
            "the serial numbers "
                + String.join(", ", written)
                + " of "
                + unit.device()
                + " are counted as different generators");
      }
    }
    return doubts;
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
    Map<String, RecordSummary> latest = new HashMap<>();
    for (Unit unit : units) {
      Map<String, int[]> of = counts.computeIfAbsent(unit.device(), k -> new LinkedHashMap<>());
      for (RecordSummary visit : unit.visits()) {
        List<String> bad = visit.failedAsFound();
        for (RecordSummary.Measured value : visit.values()) {
          if (asFound(visit, value)) {
            int[] count = of.computeIfAbsent(value.id(), k -> new int[2]);
            count[0] += bad.contains(value.id()) ? 1 : 0;
            count[1]++;
            latest.merge(unit.device() + "\n" + value.id(), visit, BinaryOperator.maxBy(BY_DAY));
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
                    String name = Objects.requireNonNull(latest.get(device + "\n" + id)).name(id);
                    rates.add(new Rate(device, name, count[0], count[1]));
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
    Trend trend = Trend.of(dates, readings, last.lower(), last.upper(), last.step());
    return trend == null || !trend.hasInterval()
        ? null
        : new Drift(
            unit,
            last,
            visits.get(visits.size() - 1).name(last.id()),
            trend,
            trend.daysInside(dates.get(dates.size() - 1)));
  }

  private static boolean sameMeaning(RecordSummary.Measured one, RecordSummary.Measured other) {
    return one.unit().equals(other.unit())
        && Double.compare(one.lower(), other.lower()) == 0
        && Double.compare(one.upper(), other.upper()) == 0;
  }

  /**
   * What is known of the use of an instrument.
   *
   * @param visits in which it was used, in order of their dates
   * @param doubtful records that do not tell whether it was, each with why
   */
  public record Uses(List<RecordSummary> visits, List<LeftOut> doubtful) {}

  /**
   * The visits in which an instrument was used.
   *
   * @param serial of the instrument, in any case and with any dashes
   * @param from the first day; null for no bound, likewise {@code to}, the last day
   */
  public Uses using(String serial, @Nullable LocalDate from, @Nullable LocalDate to) {
    List<RecordSummary> visits = new ArrayList<>();
    units.forEach(unit -> visits.addAll(unit.visits()));
    visits.removeIf(visit -> from != null && visit.date().isBefore(from));
    visits.removeIf(visit -> to != null && visit.date().isAfter(to));
    visits.sort(BY_DAY);
    List<RecordSummary> found = new ArrayList<>();
    List<LeftOut> doubtful = new ArrayList<>();
    for (RecordSummary visit : visits) {
      if (visit.instruments().stream().anyMatch(one -> isSame(serial, one.serial()))) {
        found.add(visit);
      } else {
        visit.instruments().stream()
            .map(one -> doubt(serial, one))
            .filter(Objects::nonNull)
            .forEach(why -> doubtful.add(new LeftOut(visit.file(), visit.date() + ", " + why)));
      }
    }
    return new Uses(found, doubtful);
  }

  private static boolean isSame(String asked, @Nullable String written) {
    return written != null && SerialNumber.key(asked).equals(SerialNumber.key(written));
  }

  /** Why an instrument may be the one that is asked for; null where it is another. */
  private static @Nullable String doubt(String asked, UsedInstrument one) {
    String what = "the " + one.role() + " (" + one.name() + ")";
    if (one.serial() == null || Blank.isFiller(one.serial())) {
      return what + " has no serial number";
    }
    return SerialNumber.isLike(asked, one.serial()) ? what + " is '" + one.serial() + "'" : null;
  }

  /** The serial numbers of all instruments, in order, each as it was written first. */
  public List<String> instruments() {
    Map<String, String> serials = new TreeMap<>();
    for (Unit unit : units) {
      for (RecordSummary visit : unit.visits()) {
        for (UsedInstrument one : visit.instruments()) {
          if (one.serial() != null && !Blank.isFiller(one.serial())) {
            serials.putIfAbsent(SerialNumber.key(one.serial()), one.serial().strip());
          }
        }
      }
    }
    return List.copyOf(serials.values());
  }
}
