package passband.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Facts as they are found; no two of them under one key. */
final class FactList {
  private final Map<String, Fact> facts = new LinkedHashMap<>();

  /** Adds a fact; the second of one key is numbered, so that none is lost. */
  void add(Fact fact) {
    String key = fact.key();
    for (int number = 2; facts.containsKey(key); number++) {
      key = fact.key() + "#" + number;
    }
    facts.put(key, fact.underKey(key));
  }

  /** Adds what several runs have in common: once, and again for a run that differs. */
  void share(Fact fact, String run) {
    Fact first = facts.get(fact.key());
    if (first == null) {
      add(fact);
    } else if (!first.canonical().equals(fact.canonical())) {
      add(fact.underKey(run + "/" + fact.key()));
    }
  }

  /** All of them, in the order found. */
  List<Fact> list() {
    return List.copyOf(new ArrayList<>(facts.values()));
  }
}
