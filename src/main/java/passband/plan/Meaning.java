package passband.plan;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import passband.source.Sha256;

/**
 * What a compiled procedure means, as facts: all that a technician would do or read differently,
 * and what the profiles say. The digest is taken of the facts and the comparison of two revisions
 * compares them, so that two digests are equal exactly when there is no difference to tell.
 *
 * <p>Comments, layout, the spelling of numbers and units and the split into files are no part of
 * the meaning. An order is part of it where the sheet prints it or where the first of several
 * counts; then it is a fact of its own. Facts say what is done by kinds, values and the texts of
 * authors, not by sentences of the compiler's own: to reword those makes no other meaning.
 */
public final class Meaning {
  /** Changes when the same procedure comes to be written out in another way. */
  public static final int VERSION = 5;

  private final List<Fact> facts;

  private Meaning(List<Fact> facts) {
    this.facts = facts;
  }

  /** The meaning of a procedure. */
  public static Meaning of(Plan plan) {
    return of(plan, Naming.OWN);
  }

  /** The meaning of a procedure, its keys by the names of another revision. */
  public static Meaning of(Plan plan, Naming naming) {
    FactList facts = new FactList();
    new MeaningOfProcedure(facts, naming).add(plan);
    Predicate<String> drawn = Drawn.in(plan);
    new MeaningOfDevice(facts, naming, drawn).add(plan);
    MeaningOfAnalyzer.add(plan.instruments(), facts, drawn, plan.name().span());
    new MeaningOfLeads(facts).add(plan);
    new MeaningOfStages(facts, naming).add(plan);
    return new Meaning(facts.list());
  }

  /** The meaning of a profile or a rule by itself. */
  public static Meaning of(Profile profile) {
    return new Meaning(profile.facts());
  }

  /** The facts: the procedure, the profiles, then what is done in bench order. */
  public List<Fact> facts() {
    return facts;
  }

  /** The facts by key, in the same order. */
  public Map<String, Fact> byKey() {
    Map<String, Fact> byKey = new LinkedHashMap<>();
    facts.forEach(fact -> byKey.put(fact.key(), fact));
    return byKey;
  }

  /** SHA-256 of the meaning written out, in lower-case hexadecimal. */
  public String digest() {
    return Sha256.hex(written().getBytes(StandardCharsets.UTF_8));
  }

  /** A line with the version, then a line a fact in the order of their keys. */
  String written() {
    Map<String, Fact> sorted = new TreeMap<>(byKey());
    StringBuilder out = new StringBuilder("passband-meaning " + VERSION + "\n");
    for (Fact fact : sorted.values()) {
      out.append(Canonical.of(fact.key())).append(fact.canonical()).append('\n');
    }
    return out.toString();
  }
}
