package passband.diff;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.plan.Fact;

/**
 * A fact that is not the same on both sides.
 *
 * @param was null for what is new
 * @param now null for what is gone
 */
record Difference(@Nullable Fact was, @Nullable Fact now) {
  /** What is new, or what was there before it. */
  Fact fact() {
    return now != null ? now : Objects.requireNonNull(was, "a difference of nothing");
  }

  /** What it is about: an earlier name where either side says one. */
  Fact.Area area() {
    boolean named = was != null && was.area() == Fact.Area.NAME;
    return named ? Fact.Area.NAME : fact().area();
  }

  String subject() {
    return fact().subject();
  }

  /** Whether both sides say something. */
  boolean isChange() {
    return was != null && now != null;
  }
}
