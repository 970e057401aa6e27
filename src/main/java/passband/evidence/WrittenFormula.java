package passband.evidence;

import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.parse.Syntax;
import passband.source.SourceFile;
import passband.syntax.Expression;
import passband.syntax.Tree;

/**
 * A formula as the language writes it, over the names of quantities, {@code setting} and {@code
 * load}; read at most once, when its tree is first asked for. Equal where the text is.
 */
public final class WrittenFormula {
  private final String text;
  private volatile @Nullable Parsed parsed;

  /** The tree, or null where the text is not a formula. */
  private record Parsed(@Nullable Expression tree) {}

  /** Of a text that may be no formula. */
  public WrittenFormula(String text) {
    this.text = text;
  }

  /** As written. */
  public String text() {
    return text;
  }

  /** As a tree; null when the text is not a formula. */
  public @Nullable Expression tree() {
    Parsed known = parsed;
    if (known == null) {
      known = new Parsed(parsed(text));
      parsed = known;
    }
    return known.tree;
  }

  private static @Nullable Expression parsed(String formula) {
    String text = "procedure p {\n test t {\n derive d = " + formula + ", resolution 1\n }\n}\n";
    Diagnostics faults = new Diagnostics();
    Tree.File file = Syntax.parse(new SourceFile("formula", text), faults);
    if (faults.hasErrors()) {
      return null;
    }
    Tree.Procedure procedure = (Tree.Procedure) file.declarations().get(0);
    return ((Tree.Test) procedure.parts().get(0)).derives().get(0).value();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof WrittenFormula formula && formula.text.equals(text);
  }

  @Override
  public int hashCode() {
    return text.hashCode();
  }

  @Override
  public String toString() {
    return text;
  }
}
