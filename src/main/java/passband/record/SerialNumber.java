package passband.record;

import java.text.Normalizer;
import java.util.Arrays;
import java.util.Locale;

/** Serial numbers as people write them: the same one in other letters, spaces or dashes. */
final class SerialNumber {
  private SerialNumber() {}

  /**
   * Equal for what is surely the same number: in capitals, with every dash as '-' and every run of
   * spaces as one.
   */
  static String key(String written) {
    return Normalizer.normalize(written, Normalizer.Form.NFKC)
        .replaceAll("\\p{Pd}", "-")
        .replaceAll("[\\s\\p{Z}]+", " ")
        .strip()
        .toUpperCase(Locale.ROOT);
  }

  /** Equal for what may be the same number: its letters and digits alone. */
  static String bare(String written) {
    return key(written).replaceAll("[^\\p{L}\\p{N}]", "");
  }

  /** Whether what was written may mean a number that it is not the same as. */
  static boolean isLike(String asked, String written) {
    return bare(asked).equals(bare(written))
        || Arrays.asList(key(written).split("[ ,;:()/]+")).contains(key(asked));
  }
}
