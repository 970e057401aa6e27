package passband.draw;

/** The measures of a wiring drawing, in quarters of a millimetre. */
final class WiringGrid {
  static final double WIDTH = 360;

  /** Where the generator's panel ends. */
  static final double LEFT = 118;

  /** Where the analyzer's panel begins. */
  static final double RIGHT = 246;

  static final double EDGE = 2;

  /** How wide a lane is for what goes from one terminal to another on the same side. */
  static final double LANE = 15;

  /** Half the size of a terminal. */
  static final double DOT = 4.5;

  /** The size of print, nine points. */
  static final double SIZE = 12.7;

  /** From one line of print to the next. */
  static final double LINE = 14;

  static final double GAP = 5;

  private WiringGrid() {}
}
