package passband.plan;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.limit.Limit;
import passband.model.Device.Outlet;
import passband.model.Device.State;
import passband.syntax.Tree;
import passband.syntax.Word;

/** What the sheet goes through, in bench order. */
public sealed interface Stage {

  /** Calls the method for this kind. */
  <T> T accept(Visitor<T> visitor);

  /** What to do with each kind. */
  interface Visitor<T> {
    T section(Section section);

    T gate(Gate gate);

    T run(Run run);

    T adjust(Adjust adjust);

    T clear(Clear clear);

    T start(Start start);

    T end(End end);
  }

  /**
   * When a stage is done.
   *
   * @param phase null when the procedure has none
   * @param condition what has to be met; {@link Condition#NONE} for a stage that is always done
   */
  record When(@Nullable String phase, Condition condition) {
    /** The adjustments of which one has to have been made; empty where none has to. */
    public List<String> adjusted() {
      return condition.adjusted;
    }
  }

  /**
   * What has to be met for a stage to be done.
   *
   * @param adjusted the adjustments of which one has to have been made; empty for none
   * @param option the outcome that has to have been chosen; null for none
   */
  record Condition(List<String> adjusted, @Nullable Option option) {
    /** Always met. */
    public static final Condition NONE = new Condition(List.of(), null);

    /** Copies the names. */
    public Condition {
      adjusted = List.copyOf(adjusted);
    }

    /** Only after one of these adjustments. */
    public static Condition after(List<String> adjusted) {
      return new Condition(adjusted, null);
    }
  }

  /** The choice of this name was answered with one of these outcomes. */
  record Option(String choice, List<String> is) {
    /** Copies the outcomes. */
    public Option {
      is = List.copyOf(is);
    }
  }

  /** The state that a sheet begins in is brought about and confirmed. */
  record Start(PlanStep ready) implements Stage {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.start(this);
    }
  }

  /** Nothing after it is done unless everything before it that applies has passed. */
  record Gate(Word name, String text, When when) implements Stage {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.gate(this);
    }

    /** {@code NAME}, with {@code /PHASE} where there are phases. */
    public String id() {
      return when.phase == null ? name.text() : name.text() + "/" + when.phase;
    }
  }

  /** A list of steps under a heading. */
  record Section(Word name, String title, Condition condition, List<PlanStep> steps)
      implements Stage {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.section(this);
    }
  }

  /**
   * A test on one outlet, in one phase.
   *
   * @param renamedFrom its earlier name; null when it has none
   * @param outlet null when the test has none
   * @param state entered before the first point and left after the last; null when there is none
   * @param derives what is worked out from readings, by name
   * @param sweep null when the test has none
   */
  record Run(
      Word test,
      String title,
      @Nullable String renamedFrom,
      When when,
      @Nullable Outlet outlet,
      Wiring wiring,
      @Nullable State state,
      Course course,
      List<Derived> derives,
      @Nullable Swept sweep,
      Tree.Test tree)
      implements Stage {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.run(this);
    }

    /** {@code TEST/OUTLET}, with {@code /PHASE} where there are phases. */
    public String id() {
      String name = test + "/" + (outlet == null ? "-" : outlet.name().text());
      return when.phase == null ? name : name + "/" + when.phase;
    }

    /** Null when the procedure has none. */
    public @Nullable String phase() {
      return when.phase;
    }

    /** Null when the test has none. */
    public @Nullable Setup setup() {
      return wiring.setup;
    }

    /** From the wiring before to this setup. */
    public List<Move> moves() {
      return wiring.moves;
    }

    /** Whether it is done in a state of the generator, without output: its panel may be dark. */
    public boolean isStateAlone() {
      return state() != null && output() == Delivery.OFF;
    }

    /** Whether it delivers output. */
    public Delivery output() {
      return course.output;
    }

    /** What is done before the first point. */
    public List<PlanStep> before() {
      return course.before;
    }

    /** The points in bench order. */
    public List<Point> points() {
      return course.points;
    }

    /** What is delivered at them, at one point by several outlets. */
    public List<Point> delivered() {
      List<Point> all = new ArrayList<>();
      course.points.forEach(point -> all.addAll(point.delivered()));
      return all;
    }

    /** What is done after the last point. */
    public List<PlanStep> after() {
      return course.after;
    }

    /** Of what is worked out that which has limits here: a comparison at the last of its points. */
    public List<Derived> derived() {
      List<Derived> derived = new ArrayList<>(derives);
      derived.removeIf(one -> !isLimited(one.name));
      return List.copyOf(derived);
    }

    private boolean isLimited(String quantity) {
      for (Point point : course.points) {
        for (Limit limit : point.limits()) {
          if (limit.quantity().equals(quantity)) {
            return true;
          }
        }
      }
      return false;
    }

    /** The same with another course. */
    public Run with(Course other) {
      return new Run(
          test, title, renamedFrom, when, outlet, wiring, state, other, derives, sweep, tree);
    }

    /** The same after another run: the leads that go from its wiring to this one. */
    public Run withMoves(List<Move> moves) {
      return new Run(
          test,
          title,
          renamedFrom,
          when,
          outlet,
          new Wiring(wiring.setup, moves),
          state,
          course,
          derives,
          sweep,
          tree);
    }
  }

  /**
   * How the leads go.
   *
   * @param setup null when the test has none
   * @param moves from the wiring before to this setup
   */
  record Wiring(@Nullable Setup setup, List<Move> moves) {}

  /** What is done in a run: steps before the first point, the points, steps after the last. */
  record Course(Delivery output, List<PlanStep> before, List<Point> points, List<PlanStep> after) {}

  /** A quantity worked out from readings; {@code formula} as written, with what it is over. */
  record Derived(String name, String title, String formula) {}

  /** A sweep until something happens; the figures as printed. */
  record Swept(
      String what, boolean up, Figure from, Figure to, Figure step, String until, String as) {}

  /**
   * What is adjusted between two phases. Its text may have anything rewired: no lead is on when it
   * begins, and its last step makes sure of that again.
   */
  record Adjust(Word name, String title, List<String> affects, List<PlanStep> steps)
      implements Stage {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.adjust(this);
    }
  }

  /**
   * Every lead is taken off.
   *
   * @param when as the run before it
   * @param before the adjustment's name or the run's identity that it makes way for; null after the
   *     last run
   */
  record Clear(When when, @Nullable String before, List<Move> moves) implements Stage {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.clear(this);
    }
  }

  /** After the last run: the settings that nothing brings back, each where it stays. */
  record End(List<PlanStep> stays) implements Stage {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.end(this);
    }
  }
}
