package passband.draw;

import java.util.List;

/** How a lead is drawn besides its colour: ten patterns of strokes and gaps, by its number. */
final class LineStyle {
  private static final List<List<Double>> PATTERNS =
      List.of(
          List.of(),
          List.of(14.0, 4.0),
          List.of(4.0, 3.0),
          List.of(14.0, 4.0, 4.0, 4.0),
          List.of(22.0, 6.0),
          List.of(8.0, 3.0),
          List.of(14.0, 3.0, 3.0, 3.0, 3.0, 3.0),
          List.of(2.5, 4.0),
          List.of(20.0, 3.0, 8.0, 3.0),
          List.of(8.0, 7.0));

  private LineStyle() {}

  /** The pattern of the lead with this number, from 1. */
  static List<Double> of(int number) {
    return PATTERNS.get((number - 1) % PATTERNS.size());
  }
}
