package passband.syntax;

import java.util.LinkedHashSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The names that stand in an expression, in its order. */
public final class Variables extends EachPart {
  private final Set<String> names = new LinkedHashSet<>();

  private Variables() {}

  /** Empty for null. */
  public static Set<String> of(@Nullable Expression expression) {
    Variables variables = new Variables();
    if (expression != null) {
      expression.accept(variables);
    }
    return variables.names;
  }

  @Override
  public Void variable(Expression.Variable variable) {
    names.add(variable.name().text());
    return null;
  }
}
