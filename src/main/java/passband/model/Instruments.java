package passband.model;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import passband.model.Analyzer.LoadBank;
import passband.model.Analyzer.Measure;
import passband.quantity.Rational;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * The instruments of a bench, each in a role. One unit may take several roles.
 *
 * @param roles in the order of the procedure, never empty
 */
public record Instruments(List<Taken> roles) {
  /** The role of an instrument for which the procedure names none. */
  public static final String ONLY = "analyzer";

  /** The owner of what the generator itself shows. */
  public static final String DEVICE = "device";

  /**
   * A role and the instrument that takes it.
   *
   * @param role where it is declared
   * @param unit under the role by which its jacks go: of several roles of one unit, one
   */
  public record Taken(Word role, Analyzer unit) {}

  /** Keeps the order. */
  public Instruments {
    roles = List.copyOf(roles);
  }

  /** The role of this name and what takes it; null when there is none. */
  public @Nullable Taken find(String role) {
    for (Taken one : roles) {
      if (one.role.text().equals(role)) {
        return one;
      }
    }
    return null;
  }

  /**
   * The instrument in a role.
   *
   * @throws IllegalArgumentException for no role of this procedure
   */
  public Analyzer in(String role) {
    Taken one = find(role);
    if (one == null) {
      throw new IllegalArgumentException("no instrument is " + role);
    }
    return one.unit;
  }

  /** The names of the roles. */
  public List<String> names() {
    List<String> names = new ArrayList<>();
    roles.forEach(one -> names.add(one.role.text()));
    return names;
  }

  /** Each unit once, in the order of the roles. */
  public List<Analyzer> units() {
    if (roles.size() == 1) {
      return List.of(roles.get(0).unit);
    }
    List<Analyzer> units = new ArrayList<>();
    Set<String> seen = new LinkedHashSet<>();
    for (Taken one : roles) {
      if (seen.add(one.unit.role())) {
        units.add(one.unit);
      }
    }
    return units;
  }

  /** Whether one of them is of the declaration of this name. */
  public boolean include(String name) {
    for (Taken one : roles) {
      if (one.unit.name().text().equals(name)) {
        return true;
      }
    }
    return false;
  }

  /** The declarations of all, each once. */
  public List<Tree.Analyzer> declarations() {
    List<Tree.Analyzer> all = new ArrayList<>();
    Set<String> seen = new LinkedHashSet<>();
    for (Taken one : roles) {
      if (seen.add(one.unit.name().text())) {
        all.add(one.unit.tree());
      }
    }
    return all;
  }

  /** The jacks and keys of all. */
  public List<Terminal> terminals() {
    return ofAll(Analyzer::terminals);
  }

  /** The loads of all. */
  public List<LoadBank> loads() {
    return ofAll(Analyzer::loads);
  }

  /** What any of them measures. */
  public List<Measure> measures() {
    return ofAll(Analyzer::measures);
  }

  private <T> List<T> ofAll(Function<Analyzer, List<T>> part) {
    List<Analyzer> units = units();
    if (units.size() == 1) {
      return part.apply(units.get(0));
    }
    List<T> all = new ArrayList<>();
    units.forEach(unit -> all.addAll(part.apply(unit)));
    return all;
  }

  /** Those that measure a quantity. */
  public List<Analyzer> measuring(String quantity) {
    List<Analyzer> some = new ArrayList<>(units());
    some.removeIf(unit -> unit.measure(quantity) == null);
    return some;
  }

  /** The first load that can be set to the value; null when there is none. */
  public @Nullable LoadBank load(Rational ohms) {
    for (LoadBank load : loads()) {
      if (load.values().contains(ohms)) {
        return load;
      }
    }
    return null;
  }

  /** Their names as printed: {@code Gannet 4, Linden 3}. */
  public String titles() {
    List<String> titles = new ArrayList<>();
    units().forEach(unit -> titles.add(unit.title()));
    return String.join(", ", titles);
  }
}
