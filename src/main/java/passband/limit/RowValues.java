package passband.limit;

import java.util.Collection;
import org.jspecify.annotations.Nullable;
import passband.source.Span;
import passband.syntax.Word;

/** What the names in an expression stand for at one point. */
public interface RowValues {
  /** The value of a name; null when it stands for nothing here. */
  @Nullable Value value(String name);

  /** The same of a name in a source; what it stands for may be recorded. */
  default @Nullable Value value(Word written) {
    return value(written.text());
  }

  /** The names that stand for something. */
  Collection<String> names();

  /** Why a name that the language gives stands for nothing here; null when nothing tells. */
  default @Nullable String whyNone(String name) {
    return null;
  }

  /** Where the point's row is written; null where there is none. */
  default @Nullable Span row() {
    return null;
  }
}
