package passband.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import passband.source.Span;

/**
 * The bench at one moment.
 *
 * @param known what is known of it; what is not in it is unknown
 * @param strain what output has asked of the generator and of the loads until now
 */
public record BenchState(SortedMap<Variable, Known> known, Strain strain) {
  /** Nothing is known; every load is cold, and no rest is due. */
  public static final BenchState UNKNOWN = new BenchState(new TreeMap<>(), Strain.NONE);

  static final String OFF = "off";
  static final String NONE = "none";
  static final String HOLDING = "holding";
  static final String RUNNING = "running";
  static final String HELD = "held";
  static final String HELD_BESIDES = "held besides";
  static final String FREE = "let go";

  /** A variable before and after a step; null where it is unknown. */
  public record Change(Variable what, @Nullable String was, @Nullable String now) {}

  /** What is known of a variable; null when nothing is. */
  public @Nullable Known get(Variable variable) {
    return known.get(variable);
  }

  /** The value of a variable; null when it is unknown. */
  public @Nullable String value(Variable variable) {
    Known one = known.get(variable);
    return one == null ? null : one.value();
  }

  /** Whether some instrument holds a reading. */
  public boolean holds() {
    return first(Variable.Kind.ANALYZER, HOLDING) != null;
  }

  /** Whether output is known to be off. */
  public boolean isOff() {
    return OFF.equals(value(Variable.OUTPUT));
  }

  /** The first variable of a kind that has one of some values; null where none has. */
  private @Nullable Variable first(Variable.Kind kind, String... values) {
    for (var one : known.entrySet()) {
      if (one.getKey().kind() == kind && List.of(values).contains(one.getValue().value())) {
        return one.getKey();
      }
    }
    return null;
  }

  /** What a hand holds: the first button, pedal or key; null where it holds none. */
  public @Nullable Variable held() {
    return first(Variable.Kind.HELD, HELD, HELD_BESIDES);
  }

  /** The first instrument that runs; null where none does. */
  public @Nullable Variable running() {
    return first(Variable.Kind.ANALYZER, RUNNING);
  }

  BenchState with(Variable variable, String value, Span since) {
    SortedMap<Variable, Known> other = new TreeMap<>(known);
    other.put(variable, new Known(value, since));
    return new BenchState(other, strain);
  }

  BenchState without(Variable... unknown) {
    return without(List.of(unknown)::contains);
  }

  /** The same with every variable of some kinds unknown. */
  BenchState withoutKinds(List<Variable.Kind> kinds) {
    return without(variable -> kinds.contains(variable.kind()));
  }

  /** The same with the generator's panel and its other settings unknown. */
  BenchState withoutPanel() {
    return without(Variable::isOfPanel);
  }

  private BenchState without(Predicate<Variable> unknown) {
    for (Variable variable : known.keySet()) {
      if (unknown.test(variable)) {
        SortedMap<Variable, Known> other = new TreeMap<>(known);
        other.keySet().removeIf(unknown);
        return new BenchState(other, strain);
      }
    }
    return this;
  }

  /** The same with another strain. */
  BenchState with(Strain other) {
    return new BenchState(known, other);
  }

  /** Nothing is known any more but what output has asked for. */
  BenchState forgotten() {
    return UNKNOWN.with(strain);
  }

  /** What is known of both, and the greater strain. */
  BenchState join(BenchState other) {
    SortedMap<Variable, Known> both = new TreeMap<>();
    known.forEach(
        (variable, one) -> {
          if (one.value().equals(other.value(variable))) {
            both.put(variable, one);
          }
        });
    return new BenchState(both, strain.join(other.strain));
  }

  /** What differs from here to another state, in the order of the variables. */
  public List<Change> changes(BenchState after) {
    TreeSet<Variable> all = new TreeSet<>(known.keySet());
    all.addAll(after.known.keySet());
    List<Change> changes = new ArrayList<>();
    for (Variable variable : all) {
      String was = value(variable);
      String now = after.value(variable);
      if (was == null ? now != null : !was.equals(now)) {
        changes.add(new Change(variable, was, now));
      }
    }
    changes.addAll(strain.changes(after.strain));
    return changes;
  }
}
