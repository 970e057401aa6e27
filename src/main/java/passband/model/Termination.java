package passband.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import passband.syntax.Word;

/** What output goes into instead of a load: nothing, or a short circuit. */
public enum Termination {
  /** No load: a voltage can be read, and no current flows. */
  OPEN,
  /** A short circuit: a current can be read, and there is no voltage. */
  SHORT;

  /** As written and printed. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Those that are written, each once. */
  public static List<Termination> of(List<Word> written) {
    List<Termination> found = new ArrayList<>(Arrays.asList(values()));
    found.removeIf(one -> !isIn(written, one));
    return List.copyOf(found);
  }

  private static boolean isIn(List<Word> written, Termination one) {
    for (Word word : written) {
      if (word.text().equals(one.word())) {
        return true;
      }
    }
    return false;
  }

  /** The words of all of them. */
  public static List<String> words(List<Termination> all) {
    List<String> words = new ArrayList<>();
    all.forEach(one -> words.add(one.word()));
    return words;
  }
}
