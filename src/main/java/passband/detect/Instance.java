package passband.detect;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleFunction;
import java.util.function.Predicate;

/**
 * A fault of one size at one place, and the readings that it changes.
 *
 * @param where in words: {@code slit}, {@code mono-1}, an identity of a point
 * @param changes empty where no reading would show it
 * @param chance how what fails is worked out from them
 * @param counts which values that are worked out from readings count
 */
record Instance(
    Fault fault,
    Fault.Size size,
    String where,
    List<Change> changes,
    Way chance,
    Predicate<WorkedOut> counts) {

  /**
   * A reading as the fault has it.
   *
   * @param seen of a good generator
   * @param of of a generator that gives some true value in SI, with the same fault
   */
  record Change(SheetLine line, Observation seen, DoubleFunction<Observation> of) {
    /** A reading that is the same whatever the generator gives. */
    Change(SheetLine line, Observation seen) {
      this(line, seen, truth -> seen);
    }

    /** A reading that goes with what the generator gives. */
    static Change by(SheetLine line, DoubleFunction<Observation> of) {
      return new Change(line, of.apply(line.nominal()), of);
    }

    /**
     * A reading that has another true value, in SI; NaN for no number. It goes in proportion with
     * what the generator gives.
     */
    static Change to(SheetLine line, double truth) {
      return new Change(line, line.at(truth), given -> line.at(given * (truth / line.nominal())));
    }

    boolean outside() {
      return line.isOutside(seen.truth());
    }
  }

  /** How the probability comes from the changed readings. */
  interface Way {
    Chance failing(Kernel kernel, Visit visit);
  }

  /** At least one of them fails, with the errors that they share. */
  static final Way JOINTLY = (kernel, visit) -> visit.failing(kernel);

  /** There is nothing of the kind. */
  private static final Way NOTHING = (kernel, visit) -> Chance.NEVER;

  static Instance ofNothing(Fault fault, Fault.Size size) {
    return new Instance(fault, size, "", List.of(), NOTHING);
  }

  /** What there is, but no reading shows. */
  static Instance notRead(Fault fault, Fault.Size size, String where) {
    return new Instance(fault, size, where, List.of());
  }

  /** One for each place, in the order of the places. */
  static List<Instance> each(Fault fault, Fault.Size size, Map<String, List<Change>> places) {
    List<Instance> instances = new ArrayList<>();
    places.forEach((where, changes) -> instances.add(new Instance(fault, size, where, changes)));
    return instances;
  }

  Instance(Fault fault, Fault.Size size, String where, List<Change> changes) {
    this(fault, size, where, List.copyOf(changes), JOINTLY);
  }

  Instance(Fault fault, Fault.Size size, String where, List<Change> changes, Way chance) {
    this(fault, size, where, changes, chance, value -> true);
  }

  Chance failing(Kernel kernel) {
    return chance.failing(kernel, visit());
  }

  /** What stands on the display. */
  Visit visit() {
    Visit visit = new Visit(counts, fault.isOfOutput());
    changes.forEach(change -> visit.add(change.line(), change.seen()));
    return visit;
  }

  /** The same while only some readings are taken; nothing is worked out without one of them. */
  Instance only(Predicate<SheetLine> kept) {
    return only(kept, value -> value.parts().stream().allMatch(kept));
  }

  /** The same with some of its changes; what is worked out from others is left aside. */
  Instance alone(Predicate<SheetLine> kept) {
    Set<SheetLine> others = new HashSet<>();
    for (Change change : changes) {
      if (!kept.test(change.line())) {
        others.add(change.line());
      }
    }
    return only(kept, value -> value.parts().stream().noneMatch(others::contains));
  }

  private Instance only(Predicate<SheetLine> kept, Predicate<WorkedOut> counted) {
    List<Change> some = new ArrayList<>(changes);
    some.removeIf(change -> !kept.test(change.line()));
    return new Instance(fault, size, where, some, chance, counts.and(counted));
  }

  /** The places of its output that it changes. */
  Set<Place> places() {
    Set<Place> places = new LinkedHashSet<>();
    for (Change change : changes) {
      if (change.line().point().mode() != null) {
        places.add(Place.of(change.line()));
      }
    }
    return places;
  }

  Outcome outcome(Chance power) {
    if (chance == NOTHING) {
      return Outcome.NOT_APPLICABLE;
    }
    if (changes.isEmpty()) {
      return Outcome.NOT_READ;
    }
    boolean outside = changes.stream().anyMatch(Change::outside) || visit().isOutside();
    if (!fault.anySize() && !outside) {
      return Outcome.INSIDE;
    }
    return Outcome.of(power);
  }
}
