package passband.syntax;

import java.util.LinkedHashSet;
import java.util.Set;

/** The functions that an expression calls, in its order. */
public final class Functions extends EachPart {
  private final Set<String> names = new LinkedHashSet<>();

  private Functions() {}

  /** Their names. */
  public static Set<String> of(Expression expression) {
    Functions functions = new Functions();
    expression.accept(functions);
    return functions.names;
  }

  @Override
  public Void call(Expression.Call call) {
    names.add(call.function().text());
    return super.call(call);
  }
}
