package passband.diagnostic;

import java.util.Collection;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Finds the word that was probably meant. */
public final class Spelling {
  private Spelling() {}

  /**
   * The nearest of the candidates, by insertions, deletions, substitutions and swaps of neighbours,
   * when it is near enough to be a slip of the hand; null otherwise. Of equally near ones the first
   * in alphabetical order.
   */
  public static @Nullable String nearest(String written, Collection<String> candidates) {
    String best = null;
    int least = Math.max(1, Math.min(3, written.length() / 3)) + 1;
    for (String candidate : candidates) {
      if (Math.abs(candidate.length() - written.length()) >= least + (best == null ? 0 : 1)
          || candidate.equals(written)) {
        continue;
      }
      int distance = distance(written.toLowerCase(Locale.ROOT), candidate.toLowerCase(Locale.ROOT));
      if (distance < least
          || (distance == least && best != null && candidate.compareTo(best) < 0)) {
        least = distance;
        best = candidate;
      }
    }
    return best;
  }

  /** Optimal string alignment distance. */
  static int distance(String a, String b) {
    int[] before = new int[b.length() + 1];
    int[] last = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      last[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int[] row = new int[b.length() + 1];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int cost = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        row[j] = Math.min(Math.min(row[j - 1], last[j]) + 1, last[j - 1] + cost);
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          row[j] = Math.min(row[j], before[j - 2] + 1);
        }
      }
      before = last;
      last = row;
    }
    return last[b.length()];
  }
}
