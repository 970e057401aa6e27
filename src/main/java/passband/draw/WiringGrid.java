package passband.draw;

/**
 * The measures of a wiring drawing, in quarters of a millimetre: the generator's panel at the left,
 * the leads, the instruments' panels at the right.
 *
 * @param left where the generator's panel ends
 * @param right where the instruments' panels begin
 * @param width of the whole
 */
record WiringGrid(double left, double right, double width) {
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

  /**
   * How much wider a type may be that a browser shows in place of the one that is measured, as Noto
   * Sans beside DejaVu Sans Condensed; those that the drawings name are narrower.
   */
  static final double OTHER_TYPE = 1.05;

  /** What is beside the name of a terminal: the edge, the terminal, air. */
  private static final double BESIDE_NAME = 13 + EDGE;

  /** What is beside the name of a lead. */
  private static final double BESIDE_LEAD = 16;

  private static final double LEAST_PANEL = 118;
  private static final double MOST_PANEL = 190;
  private static final double LEAST_LEADS = 88;
  private static final double MOST_LEADS = 128;
  private static final double USUAL_WIDTH = 360;

  /** No part of any drawing is narrower. */
  static final WiringGrid NARROWEST = of(LEAST_PANEL, LEAST_LEADS, LEAST_PANEL);

  private static WiringGrid of(double left, double leads, double right) {
    return new WiringGrid(left, left + leads, left + leads + right);
  }

  /**
   * How wide names are that stand in one part.
   *
   * @param word the longest word of any
   * @param whole the longest of them
   */
  record Need(double word, double whole) {
    static final Need NONE = new Need(0, 0);

    /** With a text besides, in print of the usual size. */
    Need and(String text, boolean bold) {
      double longest = word;
      for (String one : text.split(" ")) {
        longest = Math.max(longest, TextWidths.width(one, SIZE, bold));
      }
      return new Need(longest, Math.max(whole, TextWidths.width(text, SIZE, bold)));
    }
  }

  /**
   * As wide as the words need, so that none is broken; what is left of the usual width goes to
   * names that would take several lines.
   *
   * @param leftLanes how many lanes are at the generator's terminals, likewise {@code rightLanes}
   */
  static WiringGrid fitting(Need left, int leftLanes, Need leads, Need right, int rightLanes) {
    double first = panel(left.word, leftLanes, LEAST_PANEL);
    double last = panel(right.word, rightLanes, LEAST_PANEL);
    double between = between(leads.word, LEAST_LEADS, MOST_PANEL);
    double spare = USUAL_WIDTH - first - between - last;
    double wider =
        share(spare, between(leads.whole, between, Math.max(between, MOST_LEADS)), between);
    between += wider;
    spare -= wider;
    wider = share(spare / 2, panel(left.whole, leftLanes, first), first);
    first += wider;
    spare -= wider;
    wider = share(spare, panel(right.whole, rightLanes, last), last);
    last += wider;
    spare -= wider;
    return of(first, between + Math.max(0, spare), last);
  }

  private static double share(double spare, double wanted, double has) {
    return Math.max(0, Math.min(spare, wanted - has));
  }

  private static double panel(double text, int lanes, double least) {
    double wanted = Math.ceil(text * OTHER_TYPE + BESIDE_NAME + LANE * lanes);
    return Math.min(Math.max(wanted, least), Math.max(least, MOST_PANEL));
  }

  private static double between(double text, double least, double most) {
    return Math.min(Math.max(Math.ceil(text * OTHER_TYPE + BESIDE_LEAD), least), most);
  }

  /** How wide the name of a terminal can be in the type that is measured. */
  double nameWidth(boolean analyzer, int lanes) {
    double panel = analyzer ? width - right : left;
    return (panel - BESIDE_NAME - LANE * lanes) / OTHER_TYPE;
  }

  /** The same of a lead. */
  double leadWidth() {
    return (right - left - BESIDE_LEAD) / OTHER_TYPE;
  }
}
