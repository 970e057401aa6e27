package passband.render;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import passband.plan.Act;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.plan.StepText;
import passband.quantity.Rational;
import passband.words.Language;

/** The steps of a line; where output comes on, how long it stays on is said first. */
final class StepsOfLine {
  private final Language language;

  StepsOfLine(Language language) {
    this.language = language;
  }

  /** With what stands on the line left open. */
  List<Sheet.StepLine> shared(Point point) {
    return lines(
        point,
        step ->
            standsOnLine(step, point) ? StepText.forEachLine(step, language) : step.text(language));
  }

  /** Of several loads only that of the instrument that measures has a column. */
  private static boolean standsOnLine(PlanStep step, Point point) {
    if (step.act() instanceof Act.SetLoad load) {
      return load.unit().role().equals(point.loadAt());
    }
    return !(step.act() instanceof Act.Set set)
        || point.extras().containsKey(set.setting())
        || point.extras().containsKey(set.id());
  }

  /** With the line's own values in them. */
  List<Sheet.StepLine> own(Point point) {
    return lines(point, step -> step.text(language));
  }

  private List<Sheet.StepLine> lines(Point point, Function<PlanStep, String> says) {
    List<Sheet.StepLine> lines = new ArrayList<>();
    String on = on(point);
    boolean activated = false;
    for (PlanStep step : point.stepsWithRest()) {
      boolean activates = step.standsFor(PlanStep.Kind.ACTIVATE);
      String text = says.apply(step);
      boolean timed = activates && !activated && on != null && !text.isEmpty();
      lines.add(line(step, timed ? on + text : text));
      activated = activates;
    }
    return lines;
  }

  /** How long output is on, or may be by the mode's duty; null where neither is known. */
  private @Nullable String on(Point point) {
    String on = seconds(point.onTime());
    String most = seconds(point.on().allowed());
    if (on != null) {
      return language.of("step.on", on) + " ";
    }
    return most == null ? null : language.of("step.on.most", most) + " ";
  }

  /** What it asks for stands under the line. */
  private Sheet.StepLine line(PlanStep step, String text) {
    String said =
        switch (step.kind()) {
          case CONFIRM -> language.of("at.line.tick", text);
          case RECORD -> language.of("at.line.write", text);
          case CHOOSE -> language.of("at.line.mark", text);
          default -> text;
        };
    return new Sheet.StepLine(step.kind().word(), said, null, lasts(step));
  }

  /** How many seconds a step lasts, rounded up; null where it is neither a wait nor a rest. */
  static @Nullable String lasts(PlanStep step) {
    if (step.act() instanceof Act.Rest rest) {
      return whole(rest.time().si());
    }
    return step.act() instanceof Act.Wait wait ? whole(wait.time().si()) : null;
  }

  /** A time in whole seconds, rounded up; null where there is none. */
  static @Nullable String seconds(@Nullable Rational seconds) {
    return seconds == null ? null : whole(seconds) + " s";
  }

  private static String whole(Rational seconds) {
    return seconds.ceilingTo(Rational.ONE).toPlain();
  }
}
