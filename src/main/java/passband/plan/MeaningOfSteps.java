package passband.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.model.Lead;
import passband.model.Terminal;
import passband.plan.Fact.Area;
import passband.source.Span;

/**
 * Steps by kind, operands and the author's text with its placeholders. Sentences of the compiler's
 * own are no part of it; what a placeholder stands for is an operand or a fact of its own.
 */
final class MeaningOfSteps {
  private final Operands operands;

  MeaningOfSteps(Naming naming) {
    this.operands = new Operands(naming);
  }

  Fact fact(Area area, String key, String subject, List<PlanStep> steps, @Nullable Span span) {
    List<String> shown = shown(steps);
    String text = String.join(" / ", shown);
    return Fact.of(area, key, subject, canonical(steps), text, span).with(steps, shown);
  }

  /** What values that these steps record have to be, each a fact of its own. */
  List<Fact> records(String key, String subject, List<PlanStep> steps) {
    List<Fact> facts = new ArrayList<>();
    for (PlanStep step : steps) {
      if (step.act() instanceof Act.Noted noted && noted.limit() != null) {
        String name = "record " + noted.name();
        facts.add(Fact.record(key + "/" + name, subject + ", " + name, noted.limit(), step.span()));
      }
    }
    return facts;
  }

  private String canonical(List<PlanStep> steps) {
    List<String> each = new ArrayList<>();
    steps.forEach(step -> each.add(canonical(step)));
    return Canonical.of(each);
  }

  private String canonical(PlanStep step) {
    return Canonical.of(
        step.kind().word(),
        step.insteadOf(),
        step.act().accept(operands),
        step.words() == null ? null : parts(step.words()));
  }

  private static List<String> parts(Words words) {
    List<String> parts = new ArrayList<>();
    for (Words.Part part : words.parts()) {
      parts.add(
          part instanceof Words.Filled filled
              ? Canonical.of(filled.slot(), filled.name())
              : Canonical.of(((Words.Said) part).text()));
    }
    return parts;
  }

  private List<String> shown(List<PlanStep> steps) {
    List<String> each = new ArrayList<>();
    steps.forEach(step -> each.add(shown(step)));
    return each;
  }

  private String shown(PlanStep step) {
    StringBuilder shown = new StringBuilder();
    shown.append(step.insteadOf() == null ? "" : "for " + step.insteadOf() + ": ");
    shown.append(step.kind().word());
    for (Object operand : step.act().accept(operands)) {
      shown.append(operand == null ? " -" : " " + shown(operand));
    }
    if (step.words() != null) {
      shown.append(" “").append(step.words().text(MeaningOfSteps::placeholder)).append('”');
    }
    return shown.toString();
  }

  private static String shown(Object operand) {
    return operand instanceof Figure figure ? figure.text() : operand.toString();
  }

  private static String placeholder(Words.Filled filled) {
    return filled.slot().name().toLowerCase(java.util.Locale.ROOT).equals(filled.name())
        ? "{" + filled.name() + "}"
        : "{" + filled.slot().name().toLowerCase(java.util.Locale.ROOT) + " " + filled.name() + "}";
  }

  /** The operands of an act, as they are written. */
  private static final class Operands implements Act.Visitor<List<@Nullable Object>> {
    private final Naming naming;

    Operands(Naming naming) {
      this.naming = naming;
    }

    private static List<@Nullable Object> of(@Nullable Object... operands) {
      return Arrays.asList(operands);
    }

    private @Nullable String terminal(@Nullable Terminal terminal) {
      return terminal == null ? null : naming.terminal(terminal);
    }

    private static @Nullable String lead(@Nullable Lead lead) {
      return lead == null ? null : lead.name().text();
    }

    @Override
    public List<@Nullable Object> select(Act.Select s) {
      String outlet = s.outlet() == null ? null : naming.outlet(s.outlet().name().text());
      return of(outlet, naming.mode(s.mode().name().text()));
    }

    @Override
    public List<@Nullable Object> adjust(Act.Adjust a) {
      return of(a.setting());
    }

    @Override
    public List<@Nullable Object> set(Act.Set s) {
      return of(s.owner().role(), s.setting(), s.value());
    }

    @Override
    public List<@Nullable Object> setLoad(Act.SetLoad s) {
      String role = s.unit().role();
      return s.termination() == null
          ? of(role, s.load())
          : of(role, s.load(), s.termination().word());
    }

    @Override
    public List<@Nullable Object> free(Act.Free f) {
      return of();
    }

    @Override
    public List<@Nullable Object> run(Act.Run r) {
      return r.released() == null
          ? of(r.unit().role())
          : of(r.unit().role(), terminal(r.released().contact()), lead(r.released().accessory()));
    }

    @Override
    public List<@Nullable Object> activate(Act.Activate a) {
      if (a.beside()) {
        return of(terminal(a.contact()), terminal(a.key()), lead(a.accessory()), "beside");
      }
      return a.accessory() == null
          ? of(terminal(a.contact()), terminal(a.key()))
          : of(terminal(a.contact()), terminal(a.key()), lead(a.accessory()));
    }

    @Override
    public List<@Nullable Object> shown(Act.Shown s) {
      return of(
          naming.outlet(s.outlet().name().text()),
          naming.mode(s.mode().name().text()),
          s.setting());
    }

    @Override
    public List<@Nullable Object> read(Act.Read r) {
      return of(r.by().role());
    }

    @Override
    public List<@Nullable Object> perform(Act.Perform p) {
      return of(p.owner().role(), p.action(), p.stops() ? "as stop" : null);
    }

    @Override
    public List<@Nullable Object> pause(Act.Wait w) {
      return of(w.time());
    }

    @Override
    public List<@Nullable Object> rest(Act.Rest r) {
      return of();
    }

    @Override
    public List<@Nullable Object> confirm(Act.Confirm c) {
      return of(c.name());
    }

    @Override
    public List<@Nullable Object> noted(Act.Noted n) {
      return of(n.name(), n.unit());
    }

    @Override
    public List<@Nullable Object> caution(Act.Caution c) {
      return of(c.name());
    }

    @Override
    public List<@Nullable Object> choose(Act.Choose c) {
      return of(c.name(), c.outcomes(), c.pass());
    }

    @Override
    public List<@Nullable Object> ready(Act.Ready r) {
      List<String> states = new ArrayList<>();
      r.states().forEach(state -> states.add(state.name().text()));
      return of(states);
    }

    @Override
    public List<@Nullable Object> stays(Act.Stays s) {
      return of(s.id(), s.value());
    }
  }
}
