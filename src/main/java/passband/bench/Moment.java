package passband.bench;

import org.jspecify.annotations.Nullable;

/**
 * One step of the sheet with the bench before and after it.
 *
 * @param place the section, run or adjustment
 * @param point the identity of the point; null outside points
 * @param kind of the step: {@code connect}, {@code select} and so on
 * @param text what the sheet prints
 */
public record Moment(
    String place,
    @Nullable String point,
    String kind,
    String text,
    BenchState before,
    BenchState after) {}
