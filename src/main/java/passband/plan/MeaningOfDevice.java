package passband.plan;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import passband.model.Device;
import passband.model.Terminal;
import passband.plan.Fact.Area;
import passband.source.Span;
import passband.syntax.Ratings;
import passband.syntax.Tree;
import passband.syntax.Word;

/** What the generator's profile says. */
final class MeaningOfDevice {
  private final FactList facts;
  private final Naming naming;
  private final MeaningOfProfiles profile;

  MeaningOfDevice(FactList facts, Naming naming, Predicate<String> drawn) {
    this.facts = facts;
    this.naming = naming;
    this.profile = new MeaningOfProfiles(facts, naming, Area.PROFILE, drawn);
  }

  void add(Plan plan) {
    add(plan.device());
    drawnTogether(plan);
  }

  /** Of a generator by itself. */
  void add(Device device) {
    facts.add(
        Fact.of(
            Area.NAME,
            "device",
            "the generator",
            Canonical.of(device.name(), device.title()),
            FactText.titled(device.title(), device.name().text()),
            device.name().span()));
    device.limits().forEach(l -> limit("device/limit/" + l.quantity(), "the generator", l));
    device.outlets().forEach(this::outlet);
    device.modes().forEach(this::mode);
    profile.actions("generator", device.actions());
    device.states().forEach(this::state);
    device.settings().forEach(s -> profile.setting("generator", s));
    MeaningOfMeasures measures = new MeaningOfMeasures(facts, Area.PROFILE, "device/");
    device.measures().forEach(measures::add);
  }

  // ---- outlets ----

  private void outlet(Device.Outlet outlet) {
    String name = naming.outlet(outlet.name().text());
    String subject = "outlet " + name;
    Span at = outlet.name().span();
    facts.add(
        Fact.of(
            Area.PROFILE,
            "outlet/" + name,
            subject,
            Canonical.of(outlet.title()),
            FactText.titled(outlet.title()),
            at));
    renamed("outlet/" + name, subject, outlet.name(), outlet.renamedFrom());
    profile.terminals("outlet/" + name + "/terminals", subject, outlet.terminals(), at);
    profile.joins("outlet/" + name, subject, outlet.joins());
    outlet.limits().forEach(l -> limit("outlet/" + name + "/limit/" + l.quantity(), subject, l));
  }

  /** An earlier name, with the present one: it is there for as long as the note is. */
  private void renamed(String key, String subject, Word name, @Nullable String from) {
    if (from != null) {
      facts.add(
          Fact.of(
              Area.NAME,
              key + "/renamed",
              subject,
              Canonical.of(name, from),
              name + " renamed from " + from,
              name.span()));
    }
  }

  /** Outlets that one wiring drawing has together stand in it in the order of the profile. */
  private void drawnTogether(Plan plan) {
    Set<String> together = new HashSet<>();
    for (Stage.Run run : plan.runs()) {
      Set<String> owners = run.setup() == null ? Set.of() : outlets(run.setup());
      if (owners.size() > 1) {
        together.addAll(owners);
      }
    }
    List<String> names = new ArrayList<>();
    for (Device.Outlet outlet : plan.device().outlets()) {
      if (together.contains(outlet.name().text())) {
        names.add(naming.outlet(outlet.name().text()));
      }
    }
    facts.add(
        Fact.order(
            Area.PROFILE,
            "outlets",
            "the order of the outlets in the drawings",
            names,
            plan.device().name().span()));
  }

  private static Set<String> outlets(Setup setup) {
    Set<String> owners = new HashSet<>();
    for (Wire wire : setup.wires()) {
      for (Terminal end : List.of(wire.from(), wire.to())) {
        if (!end.onAnalyzer()) {
          owners.add(end.owner());
        }
      }
    }
    return owners;
  }

  // ---- modes ----

  private void mode(Device.Mode mode) {
    String name = naming.mode(mode.name().text());
    String key = "mode/" + name;
    String subject = "mode " + name;
    Span at = mode.name().span();
    facts.add(
        Fact.of(
            Area.PROFILE,
            key + "/title",
            subject,
            Canonical.of(mode.title()),
            FactText.titled(mode.title()),
            at));
    renamed(key, subject, mode.name(), mode.renamedFrom());
    outletsOf(mode, key, subject);
    values(mode, key, subject);
    if (mode.output() != null) {
      limit(key + "/output", subject + ", output", mode.output());
    }
    mode.limits().forEach(l -> limit(key + "/limit/" + l.quantity(), subject, l));
    duty(mode, key, subject);
    activation(mode, key, subject);
    mode.tolerances().unknown().forEach(u -> unknown(key, subject, u));
  }

  /** What nobody knows stands in the place of what it would be. */
  private void unknown(String key, String subject, Ratings.Unknown unknown) {
    String rating = unknown.rating().text();
    String called = unknown.called();
    boolean own = called != null;
    facts.add(
        Fact.of(
            Area.UNKNOWN,
            key + (own ? "/" : "/limit/") + rating,
            subject + (called == null ? "" : ", " + called),
            Canonical.of("unknown", unknown.reason()),
            (own ? "" : rating + " ") + FactText.known("", unknown),
            unknown.span()));
  }

  private static boolean isUnknown(Device.Mode mode, String rating) {
    return Ratings.Unknown.find(mode.tolerances().unknown(), rating) != null;
  }

  private void outletsOf(Device.Mode mode, String key, String subject) {
    Span at = mode.name().span();
    List<String> on = new ArrayList<>();
    mode.outlets().forEach(o -> on.add(naming.outlet(o.name().text())));
    on.sort(null);
    facts.add(
        Fact.of(
            Area.PROFILE,
            key + "/on",
            subject + ", outlets",
            Canonical.of(on),
            String.join(", ", on),
            at));
    String through = mode.through() == null ? null : naming.outlet(mode.through().name().text());
    facts.add(Fact.text(Area.CONTACT, key + "/through", subject + ", return path", through, at));
  }

  private void values(Device.Mode mode, String key, String subject) {
    Span at = mode.name().span();
    String kind = mode.settingKind() == null ? null : mode.settingKind().name();
    facts.add(
        Fact.of(
            Area.PROFILE,
            key + "/setting",
            subject + ", setting",
            Canonical.of(kind, MeaningOfProfiles.series(mode.setting())),
            (kind == null ? "" : kind + " ") + FactText.series(mode.setting()),
            at));
    if (mode.loads() == null && mode.terminations().isEmpty() && isUnknown(mode, "load")) {
      return;
    }
    facts.add(
        Fact.of(
            Area.PROFILE,
            key + "/load",
            subject + ", rated load",
            MeaningOfProfiles.loads(mode.loads(), mode.terminations()),
            FactText.loads(mode.loads(), mode.terminations()),
            at));
  }

  private void limit(String key, String subject, Tree.QuantityLimit limit) {
    facts.add(
        Fact.of(
                Area.PROFILE,
                key,
                subject,
                Canonical.of(limit.quantity(), LimitText.exact(limit.limit())),
                limit.quantity() + " " + LimitText.of(limit.limit()),
                limit.span())
            .with(limit.limit()));
  }

  private void duty(Device.Mode mode, String key, String subject) {
    Device.Duty duty = mode.duty();
    if (duty == null && isUnknown(mode, "duty")) {
      return;
    }
    String canonical =
        duty == null ? Canonical.of((Object) null) : Canonical.of("duty", duty.on(), duty.off());
    String shown =
        duty == null
            ? ""
            : duty.on() == null && duty.off() == null
                ? "continuous"
                : FactText.seconds(duty.on()) + " on, " + FactText.seconds(duty.off()) + " off";
    Ratings.Duty written = mode.tree().duty();
    Span at = written == null ? mode.name().span() : written.span();
    facts.add(Fact.of(Area.DUTY, key + "/duty", subject + ", duty", canonical, shown, at));
  }

  /** Any one of several contacts will do, so that their order says nothing. */
  private void activation(Device.Mode mode, String key, String subject) {
    if (mode.activateBy().isEmpty() && isUnknown(mode, "activate")) {
      return;
    }
    List<String> by = new ArrayList<>();
    for (Tree.Ref contact : mode.activateBy()) {
      List<String> parts = new ArrayList<>();
      contact.parts().forEach(part -> parts.add(part.text()));
      by.add(String.join(".", parts));
    }
    by.sort(null);
    facts.add(
        Fact.of(
            Area.CONTACT,
            key + "/activate",
            subject + ", activated by",
            Canonical.of(by),
            String.join(", ", by),
            mode.name().span()));
  }

  // ---- states ----

  private void state(Device.State state) {
    String name = "state " + state.name();
    Span at = state.name().span();
    facts.add(
        Fact.of(
            Area.TEXT,
            name + "/title",
            name,
            Canonical.of(state.title()),
            FactText.titled(state.title()),
            at));
    facts.add(Fact.text(Area.STATE, name + "/enter", name + ", enter", state.enter(), at));
    facts.add(Fact.text(Area.STATE, name + "/leave", name + ", leave", state.leave(), at));
  }
}
