package passband.limit;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import passband.resolve.Names;
import passband.source.Span;
import passband.syntax.Word;

/** Values by name; where a source uses one that a declaration gives, that is recorded. */
public final class NamedValues implements RowValues {
  private final Names names;
  private final @Nullable Span row;
  private final Map<String, Value> values = new TreeMap<>();
  private final Map<String, Word> declarations = new HashMap<>();
  private final Map<String, String> none = new HashMap<>();

  /** None yet, for no row. */
  public NamedValues(Names names) {
    this(names, null);
  }

  /** None yet, for the row that is written here. */
  public NamedValues(Names names, @Nullable Span row) {
    this.names = names;
    this.row = row;
  }

  /** Adds a value under a name that the language gives. */
  public void put(String name, Value value) {
    values.put(name, value);
  }

  /** Adds a value under a declared name. */
  public void put(Word declaration, Value value) {
    values.put(declaration.text(), value);
    declarations.put(declaration.text(), declaration);
  }

  /** Says why a name that the language gives has no value. */
  public void none(String name, String why) {
    none.put(name, why);
  }

  @Override
  public @Nullable String whyNone(String name) {
    return none.get(name);
  }

  @Override
  public @Nullable Value value(String name) {
    return values.get(name);
  }

  @Override
  public @Nullable Value value(Word written) {
    names.use(written, declarations.get(written.text()));
    return value(written.text());
  }

  @Override
  public Collection<String> names() {
    return values.keySet();
  }

  @Override
  public @Nullable Span row() {
    return row;
  }
}
