package passband.render;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.limit.Limit;
import passband.plan.Act;
import passband.plan.PlanStep;
import passband.plan.Point;

/** At which of a line's steps each of its boxes is written: nothing is known to be read before. */
final class WrittenAt {
  private final List<PlanStep> steps;

  private WrittenAt(Point point) {
    this.steps = point.stepsWithRest();
  }

  /** The places of the steps, from 0, in the order of the line's boxes. */
  static List<Integer> of(Point point) {
    WrittenAt at = new WrittenAt(point);
    List<Integer> places = new ArrayList<>();
    for (Point.Reading reading : point.readings()) {
      places.add(at.place(reading.title(), reading.by()));
    }
    for (Limit limit : point.limits()) {
      places.add(at.place(limit.title(), limit.read().by()));
    }
    return List.copyOf(places);
  }

  /**
   * The step that reads it; otherwise the last that stands for reading, and the first step where
   * nothing is read.
   *
   * @param by the role of what shows it; null where nothing says
   */
  private int place(String title, @Nullable String by) {
    int last = 0;
    for (int i = 0; i < steps.size(); i++) {
      PlanStep step = steps.get(i);
      if (step.act() instanceof Act.Read read && reads(read, title, by)) {
        return i;
      }
      last = step.standsFor(PlanStep.Kind.READ) ? i : last;
    }
    return last;
  }

  private static boolean reads(Act.Read read, String title, @Nullable String by) {
    boolean shows = by == null || read.sweep() != null || read.by().role().equals(by);
    return shows && (read.what().isEmpty() || read.what().contains(title));
  }
}
