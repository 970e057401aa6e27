package passband.evidence;

import java.math.BigDecimal;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.parse.Syntax;
import passband.source.SourceFile;
import passband.syntax.Expression;
import passband.syntax.Tree;

/**
 * How a derived value comes from readings.
 *
 * @param formula as the language writes it, over the names of quantities, {@code setting} and
 *     {@code load}
 * @param parts the items that are read for it, by quantity
 * @param load how far the load may be from what it is set to, in the load's unit
 */
public record Calculation(String formula, Map<String, String> parts, Item.Contribution load) {
  private static final String LOAD = "load error";

  /** A formula whose parts are not known yet. */
  static Calculation of(String formula) {
    return new Calculation(formula, Map.of(), loadError(BigDecimal.ZERO, BigDecimal.ZERO));
  }

  /** The error of the load as a share of it, and in its unit. */
  static Item.Contribution loadError(BigDecimal relative, BigDecimal absolute) {
    return new Item.Contribution(LOAD, relative, absolute);
  }

  /** The formula as a tree; null when it is none. */
  public @Nullable Expression expression() {
    String text = "procedure p {\n test t {\n derive d = " + formula + ", resolution 1\n }\n}\n";
    Diagnostics faults = new Diagnostics();
    Tree.File file = Syntax.parse(new SourceFile("formula", text), faults);
    if (faults.hasErrors()) {
      return null;
    }
    Tree.Procedure procedure = (Tree.Procedure) file.declarations().get(0);
    return ((Tree.Test) procedure.parts().get(0)).derives().get(0).value();
  }
}
