package passband.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import passband.plan.Figure;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.quantity.Units;

/**
 * What output has asked of the generator and of the loads.
 *
 * @param on how long output has been on, in s, as far as steps say how long they take; null while
 *     it is off
 * @param rest how long output has to stay off, in s, before it may come again
 * @param heat what each load has not got rid of yet, in J, by {@link Variable#heat}
 */
record Strain(@Nullable Rational on, Rational rest, SortedMap<Variable, Rational> heat) {
  private static final Unit SECOND = Units.of("s");
  private static final Unit JOULE = Units.of("J");

  /** Output is off, nothing is owed and every load is cold. */
  static final Strain NONE = new Strain(null, Rational.ZERO, new TreeMap<>());

  /** Output comes on. */
  Strain activated() {
    return new Strain(Rational.ZERO, rest, heat);
  }

  /** Output goes off, with a rest that is due now. */
  Strain stopped(Rational due) {
    return new Strain(null, rest.max(due), heat);
  }

  /** Output stays on for a time in s. */
  Strain longer(Rational time) {
    return new Strain(on == null ? time : on.plus(time), rest, heat);
  }

  /**
   * Output stays off for a time.
   *
   * @param time in s
   * @param cooling what each load gets rid of, in W
   */
  Strain off(Rational time, SortedMap<Variable, Rational> cooling) {
    SortedMap<Variable, Rational> cooler = new TreeMap<>(heat);
    cooler.replaceAll(
        (load, joules) ->
            joules.minus(cooling.getOrDefault(load, Rational.ZERO).times(time)).max(Rational.ZERO));
    return new Strain(on, rest.minus(time).max(Rational.ZERO), cooler);
  }

  /** The heat of a load in J; zero for one that has taken nothing. */
  Rational heat(Variable load) {
    return heat.getOrDefault(load, Rational.ZERO);
  }

  /** With another heat of a load, in J. */
  Strain withHeat(Variable load, Rational joules) {
    SortedMap<Variable, Rational> other = new TreeMap<>(heat);
    other.put(load, joules.max(Rational.ZERO));
    return new Strain(on, rest, other);
  }

  /** What differs from here to another strain. */
  List<BenchState.Change> changes(Strain after) {
    List<BenchState.Change> changes = new ArrayList<>();
    add(changes, Variable.REST, rest, after.rest, SECOND);
    TreeSet<Variable> loads = new TreeSet<>(heat.keySet());
    loads.addAll(after.heat.keySet());
    for (Variable load : loads) {
      add(changes, load, heat(load), after.heat(load), JOULE);
    }
    return changes;
  }

  private static void add(
      List<BenchState.Change> changes, Variable what, Rational was, Rational now, Unit unit) {
    if (!was.equals(now)) {
      changes.add(new BenchState.Change(what, rounded(was, unit), rounded(now, unit)));
    }
  }

  /** In whole units, rounded up. */
  private static String rounded(Rational si, Unit unit) {
    return new Figure(si.ceilingTo(Rational.ONE), unit).text();
  }

  /** The greater of both. */
  Strain join(Strain other) {
    SortedMap<Variable, Rational> most = new TreeMap<>(heat);
    other.heat.forEach((load, joules) -> most.merge(load, joules, Rational::max));
    Rational longest = on == null ? other.on : other.on == null ? on : on.max(other.on);
    return new Strain(longest, rest.max(other.rest), most);
  }
}
