package passband.diff;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import passband.limit.Decision;
import passband.quantity.Distribution;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.source.Span;
import passband.syntax.DecisionKind;
import passband.syntax.LimitExpression;
import passband.syntax.Word;

/** What a component of a plan can be instead of what it is. */
final class Mutations {
  /** How a value was changed. */
  enum Kind {
    CHANGED,
    REMOVED,
    REPEATED,
    REORDERED,
    OTHER
  }

  /** Another value. */
  record Mutation(Kind kind, Object value) {}

  private Mutations() {}

  /**
   * The other values of a component.
   *
   * @param observed values that the component has elsewhere
   */
  static List<Mutation> of(Object value, List<Object> observed) {
    List<Mutation> mutations = new ArrayList<>();
    if (value instanceof List<?> list) {
      lists(list, mutations);
    } else if (value instanceof Map<?, ?> map) {
      maps(map, mutations);
    } else if (value != null && changed(value) != null) {
      mutations.add(new Mutation(Kind.CHANGED, changed(value)));
    }
    for (Object other : mutations.isEmpty() ? observed : List.of()) {
      if (other != null && !plain(other).equals(plain(value))) {
        mutations.add(new Mutation(Kind.OTHER, other));
        break;
      }
    }
    if (value != null && observed.contains(null)) {
      mutations.add(new Mutation(Kind.REMOVED, null));
    }
    return mutations;
  }

  private static void lists(List<?> list, List<Mutation> mutations) {
    if (list.isEmpty()) {
      return;
    }
    mutations.add(new Mutation(Kind.REMOVED, new ArrayList<>(list.subList(1, list.size()))));
    List<Object> repeated = new ArrayList<>(list);
    repeated.add(list.get(0));
    mutations.add(new Mutation(Kind.REPEATED, repeated));
    if (list.get(0) instanceof String text) {
      List<Object> changed = new ArrayList<>(list);
      changed.set(0, text + "x");
      mutations.add(new Mutation(Kind.CHANGED, changed));
    }
    if (list.get(0) instanceof Word word) {
      List<Object> changed = new ArrayList<>(list);
      changed.set(0, changed(word));
      mutations.add(new Mutation(Kind.CHANGED, changed));
    }
    List<Object> reordered = new ArrayList<>(list);
    Collections.reverse(reordered);
    if (!plain(reordered).equals(plain(list))) {
      mutations.add(new Mutation(Kind.REORDERED, reordered));
    }
  }

  private static void maps(Map<?, ?> map, List<Mutation> mutations) {
    List<Map.Entry<?, ?>> entries = new ArrayList<>(map.entrySet());
    if (entries.isEmpty()) {
      return;
    }
    Map<Object, Object> changed = new LinkedHashMap<>(map);
    changed.put(entries.get(0).getKey(), changed(entries.get(0).getValue()));
    mutations.add(new Mutation(Kind.CHANGED, changed));
    Map<Object, Object> removed = new LinkedHashMap<>(map);
    removed.remove(entries.get(0).getKey());
    mutations.add(new Mutation(Kind.REMOVED, removed));
    if (entries.size() > 1) {
      Collections.reverse(entries);
      Map<Object, Object> reordered = new LinkedHashMap<>();
      entries.forEach(e -> reordered.put(e.getKey(), e.getValue()));
      mutations.add(new Mutation(Kind.REORDERED, reordered));
    }
  }

  /** A value of the same type that is not the same; null for one that has parts of its own. */
  private static Object changed(Object value) {
    if (value instanceof String text) {
      return text + "x";
    } else if (value instanceof Word word) {
      return new Word(word.text() + "x", word.span());
    } else if (value instanceof Rational number) {
      return number.isZero() ? Rational.ONE : number.over(Rational.TWO);
    } else if (value instanceof Boolean truth) {
      return !truth;
    } else if (value instanceof Integer number) {
      return number + 1;
    } else if (value instanceof Unit unit) {
      return unit.symbol().equals("mA") ? Units.find("kV") : Units.find("mA");
    } else if (value instanceof QuantityKind kind) {
      return QuantityKind.find(kind.name().equals("flow") ? "volume" : "flow");
    } else if (value instanceof Span span) {
      return new Span(span.file(), span.start(), span.start() + 1);
    } else if (value instanceof Distribution spread) {
      Distribution arcsine = Distribution.find("u-shaped", null);
      return spread.equals(arcsine) ? Distribution.RECTANGULAR : arcsine;
    } else if (value instanceof Enum<?> one) {
      Object[] all = one.getDeclaringClass().getEnumConstants();
      return all[(one.ordinal() + 1) % all.length];
    }
    return null;
  }

  /** Whether there can be such a record. */
  static boolean isPossible(Record owner, String component, Object value) {
    if (owner instanceof Decision d) {
      Object kind = component.equals("kind") ? value : d.kind();
      Object risk = component.equals("risk") ? value : d.risk();
      return (kind == DecisionKind.RISK) == (risk != null);
    } else if (owner instanceof LimitExpression.Within within) {
      return !component.equals("greater") || within.second() != null;
    }
    return !component.equals("unit")
        || !(value instanceof Word word)
        || Units.find(word.text()) != null;
  }

  /** A value in words, without the places where it is written. */
  static String plain(Object value) {
    if (value instanceof Word word) {
      return "'" + word.text() + "'";
    } else if (value instanceof Span) {
      return "";
    } else if (value instanceof Unit unit) {
      return unit.symbol();
    } else if (value instanceof List<?> list) {
      StringBuilder text = new StringBuilder("[");
      list.forEach(element -> text.append(plain(element)).append(", "));
      return text + "]";
    } else if (value instanceof Record record) {
      StringBuilder text = new StringBuilder(record.getClass().getSimpleName() + "(");
      passband.testing.RecordTree.spots(record, spot -> false)
          .forEach(spot -> text.append(plain(spot.value())).append(", "));
      return text + ")";
    }
    return String.valueOf(value);
  }
}
