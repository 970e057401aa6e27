package passband.plan;

import passband.quantity.Rational;
import passband.quantity.Unit;

/** An exact value in SI and the unit it is shown in. */
public record Figure(Rational si, Unit unit) {

  /** The number in the unit. */
  public Rational number() {
    return si.over(unit.factor());
  }

  /** For people: {@code 2.5 kΩ}. */
  public String text() {
    return unit.symbol().isEmpty() ? number().toPlain() : number().toPlain() + " " + unit.printed();
  }

  /** In identities: {@code 2.5kohm}. */
  public String id() {
    return number().toPlain() + unit.symbol();
  }
}
