package passband.syntax;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The names that stand in a limit: of columns, readings and what the language gives. */
public final class NamesInLimit implements LimitExpression.Visitor<Void> {
  private final Set<String> names = new LinkedHashSet<>();

  private NamesInLimit() {}

  /** Empty for null. */
  public static Set<String> of(@Nullable LimitExpression limit) {
    NamesInLimit all = new NamesInLimit();
    if (limit != null) {
      limit.accept(all);
    }
    return all.names;
  }

  private @Nullable Void add(@Nullable Expression expression) {
    names.addAll(Variables.of(expression));
    return null;
  }

  private void add(List<LimitExpression.Part> parts) {
    for (LimitExpression.Part part : parts) {
      if (part.column() != null) {
        names.add(part.column().text());
      }
    }
  }

  private void add(LimitExpression.@Nullable Tolerance tolerance) {
    if (tolerance != null) {
      add(tolerance.up());
      add(tolerance.down());
      add(tolerance.of());
    }
  }

  @Override
  public @Nullable Void within(LimitExpression.Within within) {
    add(within.first());
    add(within.second());
    return null;
  }

  @Override
  public @Nullable Void stated(LimitExpression.Stated stated) {
    return null;
  }

  @Override
  public @Nullable Void output(LimitExpression.Output output) {
    return null;
  }

  @Override
  public @Nullable Void ofDevice(LimitExpression.OfDevice device) {
    return null;
  }

  @Override
  public @Nullable Void between(LimitExpression.Between between) {
    add(between.lower());
    return add(between.upper());
  }

  @Override
  public @Nullable Void atMost(LimitExpression.AtMost atMost) {
    return add(atMost.upper());
  }

  @Override
  public @Nullable Void atLeast(LimitExpression.AtLeast atLeast) {
    return add(atLeast.lower());
  }
}
