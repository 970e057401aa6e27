package passband.bench;

import java.util.Locale;
import passband.model.Analyzer.LoadBank;
import passband.model.Instruments;
import passband.model.Terminal;
import passband.plan.Point;

/**
 * Something on the bench that has a value or is unknown.
 *
 * @param name which lead, setting or instrument; empty for a kind of which there is one
 */
public record Variable(Kind kind, String name) implements Comparable<Variable> {
  /** The outlet that the front panel shows. */
  public static final Variable OUTLET = new Variable(Kind.OUTLET, "");

  /** The selected mode. */
  public static final Variable MODE = new Variable(Kind.MODE, "");

  /** The mode's setting. */
  public static final Variable SETTING = new Variable(Kind.SETTING, "");

  /** The state that the generator is in; {@code none} outside every one. */
  public static final Variable INSIDE = new Variable(Kind.INSIDE, "");

  /** Whether output is on, and by which contact. */
  public static final Variable OUTPUT = new Variable(Kind.OUTPUT, "");

  /** How long output still has to stay off. */
  static final Variable REST = new Variable(Kind.REST, "");

  /** What a further outlet is set to that delivers at the same time. */
  static Variable also(Point point) {
    String outlet = point.outlet() == null ? "" : point.outlet().title();
    String mode = point.mode() == null ? "" : point.mode().title();
    return also(outlet, mode);
  }

  /** The same by its printed name and its mode's. */
  static Variable also(String outlet, String mode) {
    return new Variable(Kind.ALSO, outlet + ", " + mode);
  }

  /** What a variable is of. */
  public enum Kind {
    LEAD,
    INSIDE,
    OUTLET,
    MODE,
    SETTING,
    ALSO,
    SET,
    LOAD,
    ANALYZER,
    HELD,
    OUTPUT,
    REST,
    HEAT
  }

  /** Whether it is set at the generator's panel. */
  boolean isOfPanel() {
    return kind == Kind.OUTLET
        || kind == Kind.MODE
        || kind == Kind.SETTING
        || kind == Kind.ALSO
        || (kind == Kind.SET && name.startsWith("device."));
  }

  /** A lead's two ends. */
  public static Variable lead(String name) {
    return new Variable(Kind.LEAD, name);
  }

  /** The load of the instrument in a role. */
  public static Variable load(String role) {
    return new Variable(Kind.LOAD, role);
  }

  /** The instrument in a role: idle, running or holding a reading. */
  public static Variable unit(String role) {
    return new Variable(Kind.ANALYZER, role);
  }

  /** A button, pedal or key: whether a hand holds it. */
  public static Variable held(Terminal pressed) {
    return new Variable(Kind.HELD, pressed.id());
  }

  /** Whether it is a key of the instrument in a role. */
  boolean isHeldAt(String role) {
    return kind == Kind.HELD && name.startsWith(role + ".");
  }

  /** Another setting, {@code device.supply}. */
  public static Variable set(String id) {
    return new Variable(Kind.SET, id);
  }

  /** The heat in a load of an instrument. */
  static Variable heat(LoadBank bank) {
    String ends = bank.from().id() + " to " + bank.to().id();
    return new Variable(Kind.HEAT, bank.name() == null ? ends : bank.name() + " " + ends);
  }

  /** In words: {@code lead red}, {@code mode}. */
  public String words() {
    String kindWord = kind.name().toLowerCase(Locale.ROOT);
    boolean only = name.isEmpty() || name.equals(Instruments.ONLY);
    return kind == Kind.SET || kind == Kind.ALSO ? name : only ? kindWord : kindWord + " " + name;
  }

  @Override
  public int compareTo(Variable other) {
    int kinds = kind.compareTo(other.kind);
    return kinds != 0 ? kinds : name.compareTo(other.name);
  }
}
