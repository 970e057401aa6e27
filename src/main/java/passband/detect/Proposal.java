package passband.detect;

import java.util.List;

/**
 * What would catch a fault, as lines of the source.
 *
 * @param words in one line
 * @param seconds how much longer the sheet takes
 * @param test beside which the lines stand
 * @param inside whether they go into that test, anywhere after its first line; else after it, or
 *     after the block of tests in which it stands
 * @param lines of the source
 */
public record Proposal(
    String words, double seconds, String test, boolean inside, List<String> lines) {
  /** Copies the lines. */
  public Proposal {
    lines = List.copyOf(lines);
  }

  /** With its time: {@code … (about 63 s more)}. */
  public String text() {
    return words + " (about " + Math.round(seconds) + " s more)";
  }
}
