package passband.bench;

import org.jspecify.annotations.Nullable;

/**
 * One step of the sheet with the bench before and after it.
 *
 * @param place the section, run or adjustment
 * @param point the identity of the point; null outside points
 * @param kind of the step: {@code connect}, {@code select} and so on
 * @param said what the sheet prints
 */
public record Moment(
    String place,
    @Nullable String point,
    String kind,
    Said said,
    BenchState before,
    BenchState after) {

  /** A sentence that is made when somebody wants to read it: a check does not. */
  interface Said {
    String text();
  }

  /** What the sheet prints, in English. */
  public String text() {
    return said.text();
  }
}
