package passband.diff;

/**
 * A fact that is not the same on both sides.
 *
 * @param was null for what is new
 * @param now null for what is gone
 */
record Difference(Fact was, Fact now) {
  Fact.Area area() {
    return now == null ? was.area() : now.area();
  }

  String subject() {
    return now == null ? was.subject() : now.subject();
  }
}
