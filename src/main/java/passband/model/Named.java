package passband.model;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.syntax.Word;

/** What a profile declares by a name. */
public interface Named {
  /** The name in the source. */
  Word name();

  /** The one of this name, or null. */
  static <T extends Named> @Nullable T find(List<T> among, String wanted) {
    for (T one : among) {
      if (one.name().text().equals(wanted)) {
        return one;
      }
    }
    return null;
  }

  /** The names of all of them. */
  static List<String> names(List<? extends Named> all) {
    List<String> names = new ArrayList<>();
    all.forEach(one -> names.add(one.name().text()));
    return names;
  }
}
