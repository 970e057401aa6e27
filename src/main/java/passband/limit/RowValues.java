package passband.limit;

import java.util.Collection;
import org.jspecify.annotations.Nullable;

/** What the names in an expression stand for at one point. */
public interface RowValues {
  /** The value of a name; null when it stands for nothing here. */
  @Nullable Value value(String name);

  /** The names that stand for something. */
  Collection<String> names();
}
