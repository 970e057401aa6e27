package passband.detect;

import java.util.ArrayList;
import java.util.List;
import passband.quantity.Table;

/**
 * An entry of the catalogue.
 *
 * @param id a letter (generator, bench, person) and a number
 * @param effect what it does to readings
 * @param over what it is of: one mode, one outlet, one row and so on
 * @param anySize whether it is a fault at any size; else not while within the tolerance
 * @param decidedBy how its probability is known
 * @param source a clause, or that it is common practice
 * @param advice what would catch it, in words
 * @param unless where it does not apply, in words; a hyphen where it always does
 */
public record Fault(
    String id,
    String who,
    String name,
    String effect,
    String over,
    List<Size> sizes,
    boolean anySize,
    String decidedBy,
    String source,
    String advice,
    String unless) {

  /**
   * How great it is.
   *
   * @param value the number before the unit
   * @param ofTolerance whether it is a multiple of the mode's tolerance
   * @param text as printed; empty where there is one size alone
   */
  public record Size(double value, boolean ofTolerance, String text) {
    static Size of(String written) {
      String text = written.strip();
      if (text.equals("-")) {
        return new Size(Double.NaN, false, "");
      }
      if (text.startsWith("1/")) {
        return new Size(
            1 / Double.parseDouble(text.substring(2)), false, "1 in " + text.substring(2));
      }
      String number = text.replace("x ", "").split(" ")[0];
      double value = Double.parseDouble(number);
      String shown = text.replace("-", "\u2212").replace("x ", "\u00d7 ");
      return text.endsWith("%")
          ? new Size(value / 100, false, shown)
          : text.endsWith(" t")
              ? new Size(value, true, shown.replace(" t", " \u00d7 tolerance"))
              : new Size(value, false, text.matches("[0-9.]+") ? "\u00d7 " + shown : shown);
    }
  }

  private static final class Catalogue {
    private static final List<Fault> ALL = read();

    private static List<Fault> read() {
      List<Fault> faults = new ArrayList<>();
      for (String[] cells : Table.read(Fault.class, "faults.tsv")) {
        List<Size> sizes = new ArrayList<>();
        for (String size : cells[5].split(";")) {
          sizes.add(Size.of(size));
        }
        faults.add(
            new Fault(
                cells[0],
                cells[1],
                cells[2],
                cells[3],
                cells[4],
                List.copyOf(sizes),
                cells[6].equals("always"),
                cells[7],
                cells[8],
                cells[9],
                cells[10]));
      }
      return List.copyOf(faults);
    }
  }

  /** Whether what is delivered is another, not only what is read or written down of it. */
  boolean isOfOutput() {
    return !who.equals("person")
        && !effect.startsWith("error-")
        && !effect.equals("wider-range")
        && !effect.equals("display");
  }

  /** The whole catalogue, in order. */
  public static List<Fault> all() {
    return Catalogue.ALL;
  }
}
