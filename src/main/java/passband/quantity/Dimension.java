package passband.quantity;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The dimension of a quantity: exponents of the SI base units metre, kilogram, second, ampere,
 * kelvin, mole and candela (SI Brochure, 9th edition, 2.3.3), and of the degree Celsius, which is
 * kept apart so that it is never taken for a kelvin.
 */
public final class Dimension {
  private static final String[] BASE = {"m", "kg", "s", "A", "K", "mol", "cd", "°C"};

  /** A number. */
  public static final Dimension NONE = new Dimension(0, 0, 0, 0, 0, 0, 0, 0);

  public static final Dimension LENGTH = new Dimension(1, 0, 0, 0, 0, 0, 0, 0);
  public static final Dimension MASS = new Dimension(0, 1, 0, 0, 0, 0, 0, 0);
  public static final Dimension TIME = new Dimension(0, 0, 1, 0, 0, 0, 0, 0);
  public static final Dimension CURRENT = new Dimension(0, 0, 0, 1, 0, 0, 0, 0);
  public static final Dimension KELVIN = new Dimension(0, 0, 0, 0, 1, 0, 0, 0);
  public static final Dimension AMOUNT = new Dimension(0, 0, 0, 0, 0, 1, 0, 0);
  public static final Dimension TEMPERATURE = new Dimension(0, 0, 0, 0, 0, 0, 0, 1);
  public static final Dimension FREQUENCY = NONE.over(TIME);
  public static final Dimension ENERGY = new Dimension(2, 1, -2, 0, 0, 0, 0, 0);
  public static final Dimension POWER = ENERGY.over(TIME);
  public static final Dimension VOLTAGE = POWER.over(CURRENT);
  public static final Dimension RESISTANCE = VOLTAGE.over(CURRENT);
  public static final Dimension CONDUCTANCE = NONE.over(RESISTANCE);
  public static final Dimension CHARGE = CURRENT.times(TIME);
  public static final Dimension CAPACITANCE = CHARGE.over(VOLTAGE);
  public static final Dimension FORCE = new Dimension(1, 1, -2, 0, 0, 0, 0, 0);
  public static final Dimension PRESSURE = new Dimension(-1, 1, -2, 0, 0, 0, 0, 0);
  public static final Dimension VOLUME = LENGTH.pow(3);
  public static final Dimension FLOW = VOLUME.over(TIME);

  private static final Map<Dimension, String> WORDS = new LinkedHashMap<>();
  private static final Map<String, Dimension> NAMES = new LinkedHashMap<>();

  static {
    name("none", NONE, "a number");
    name("length", LENGTH, "a length (m)");
    name("mass", MASS, "a mass (kg)");
    name("time", TIME, "a time (s)");
    name("current", CURRENT, "a current (A)");
    name("kelvin", KELVIN, "a thermodynamic temperature (K)");
    name("amount", AMOUNT, "an amount of substance (mol)");
    name("temperature", TEMPERATURE, "a temperature (degC)");
    name("frequency", FREQUENCY, "a frequency or rate (Hz)");
    name("energy", ENERGY, "an energy (J)");
    name("power", POWER, "a power (W)");
    name("voltage", VOLTAGE, "a voltage (V)");
    name("resistance", RESISTANCE, "a resistance (ohm)");
    name("conductance", CONDUCTANCE, "a conductance (S)");
    name("charge", CHARGE, "a charge (C)");
    name("capacitance", CAPACITANCE, "a capacitance (F)");
    name("force", FORCE, "a force (N)");
    name("pressure", PRESSURE, "a pressure (Pa)");
    name("volume", VOLUME, "a volume (L)");
    name("flow", FLOW, "a flow (L/min)");
  }

  private final int[] exponents;

  private Dimension(int... exponents) {
    this.exponents = exponents;
  }

  private static void name(String name, Dimension dimension, String words) {
    WORDS.put(dimension, words);
    NAMES.put(name, dimension);
  }

  /**
   * The dimension of this name in the tables of units and quantities.
   *
   * @throws IllegalStateException when there is none
   */
  static Dimension named(String name) {
    Dimension dimension = NAMES.get(name);
    if (dimension == null) {
      throw new IllegalStateException("there is no dimension '" + name + "'");
    }
    return dimension;
  }

  /** The dimension of a product. */
  public Dimension times(Dimension other) {
    int[] sum = exponents.clone();
    for (int i = 0; i < sum.length; i++) {
      sum[i] += other.exponents[i];
    }
    return new Dimension(sum);
  }

  /** The dimension of a quotient. */
  public Dimension over(Dimension other) {
    return times(other.pow(-1));
  }

  /** The dimension of a whole power. */
  public Dimension pow(int exponent) {
    int[] powers = new int[exponents.length];
    for (int i = 0; i < powers.length; i++) {
      powers[i] = exponents[i] * exponent;
    }
    return new Dimension(powers);
  }

  /** The dimension of a square root; null when an exponent is odd. */
  public @Nullable Dimension root() {
    int[] halves = new int[exponents.length];
    for (int i = 0; i < halves.length; i++) {
      if (exponents[i] % 2 != 0) {
        return null;
      }
      halves[i] = exponents[i] / 2;
    }
    return new Dimension(halves);
  }

  /** The exponents of the base units, in their order. */
  public int[] exponents() {
    return exponents.clone();
  }

  /** Whether it is that of a number. */
  public boolean isNone() {
    return equals(NONE);
  }

  /**
   * In words with the unit: {@code a power (W)}; the units of the base where the trade has no word.
   */
  public String describe() {
    String words = WORDS.get(this);
    return words != null ? words : "a quantity in " + base();
  }

  /** In base units: {@code m^2·kg·s^-3}; empty for a number. */
  public String base() {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < exponents.length; i++) {
      if (exponents[i] != 0) {
        text.append(text.isEmpty() ? "" : "·")
            .append(BASE[i])
            .append(exponents[i] == 1 ? "" : "^" + exponents[i]);
      }
    }
    return text.toString();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Dimension that && Arrays.equals(exponents, that.exponents);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(exponents);
  }

  @Override
  public String toString() {
    return describe();
  }
}
