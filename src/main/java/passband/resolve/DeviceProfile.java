package passband.resolve;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Device;
import passband.model.Device.Duty;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.Device.State;
import passband.model.Join;
import passband.model.Named;
import passband.model.Series;
import passband.model.Terminal;
import passband.model.Termination;
import passband.quantity.Dimension;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.syntax.Amount;
import passband.syntax.LimitExpression;
import passband.syntax.Ratings;
import passband.syntax.TerminalKind;
import passband.syntax.Tree;
import passband.syntax.Word;

/** Takes a device declaration for what it means. */
final class DeviceProfile {
  private final Names names;
  private final Diagnostics diagnostics;
  private final Values values;

  DeviceProfile(Names names, Diagnostics diagnostics, Values values) {
    this.names = names;
    this.diagnostics = diagnostics;
    this.values = values;
  }

  Device device(Tree.Device tree) {
    Profiles.nameSettings(tree.actions(), tree.settings(), names);
    Profiles.requirePlaceholders(
        tree.actions(),
        tree.settings(),
        Map.of("select", "mode", "adjust", "setting"),
        diagnostics);
    List<String> steps = new ArrayList<>();
    if (!tree.modes().isEmpty()) {
      steps.add("select");
    }
    for (Tree.Mode mode : tree.modes()) {
      if (mode.settingQuantity() != null && !steps.contains("adjust")) {
        steps.add("adjust");
      }
    }
    ForgottenAction.look(tree.name(), tree.actions(), steps, diagnostics);
    ForgottenAction.settings(tree.name(), tree.actions(), tree.settings(), diagnostics);
    List<Outlet> outlets = outlets(tree);
    Scope.distinct(diagnostics, "mode", tree.modes(), Tree.Mode::name);
    Profiles.titles(
        diagnostics,
        "modes",
        tree.modes(),
        Tree.Mode::name,
        m -> Profiles.titleOf(m.title(), m.name()));
    Scope.distinct(diagnostics, "state", tree.states(), Tree.State::name);
    List<Mode> modes = new ArrayList<>();
    tree.modes().forEach(m -> modes.add(mode(m, outlets)));
    tree.modes().forEach(m -> requireRatings(m, tree));
    List<State> states = new ArrayList<>();
    tree.states().forEach(s -> states.add(state(s)));
    return new Device(
        tree.name(),
        Profiles.titleOf(tree.title(), tree.name()),
        List.copyOf(outlets),
        List.copyOf(modes),
        Profiles.actions(tree.actions(), diagnostics),
        List.copyOf(states),
        Profiles.settings(tree.settings(), diagnostics, values),
        new MeasureProfile(List.of(), names, diagnostics, values).measures(tree.measures()),
        tree.limits(),
        tree);
  }

  private List<Outlet> outlets(Tree.Device tree) {
    Scope.distinct(diagnostics, "outlet", tree.outlets(), Tree.Outlet::name);
    List<Outlet> outlets = new ArrayList<>();
    for (Tree.Outlet outlet : tree.outlets()) {
      String title = Profiles.titleOf(outlet.title(), outlet.name());
      for (Outlet other : outlets) {
        if (other.title().equals(title)) {
          sameTitle(outlet, title, other);
          break;
        }
      }
      outlets.add(outlet(outlet, title, tree));
    }
    return outlets;
  }

  private void sameTitle(Tree.Outlet outlet, String title, Outlet other) {
    diagnostics
        .say(
            Code.PRINTED_NAME_REPEATED,
            outlet.name().span(),
            "two outlets have the printed name \"%s\"",
            title)
        .note(other.name().span(), "the other is here")
        .hint("give each outlet a printed name of its own: outlet a \"…\", b \"…\" { … }");
  }

  private Outlet outlet(Tree.Outlet outlet, String title, Tree.Device device) {
    Scope.distinct(diagnostics, "terminal", outlet.terminals(), Tree.Terminal::name);
    List<Terminal> terminals = new ArrayList<>();
    for (Tree.Terminal t : outlet.terminals()) {
      terminals.add(terminal(outlet, title, t, device));
    }
    Profiles.printedNames(diagnostics, "terminals of an outlet", terminals);
    String renamed = outlet.renamedFrom() == null ? null : outlet.renamedFrom().text();
    List<Join> joins =
        Joins.of(outlet.joins(), ref -> ownPole(ref, outlet.name(), terminals), diagnostics);
    return new Outlet(
        outlet.name(), title, renamed, List.copyOf(terminals), joins, outlet.limits());
  }

  private Terminal terminal(Tree.Outlet outlet, String title, Tree.Terminal t, Tree.Device device) {
    return new Terminal(
        t.kind(),
        outlet.name().text(),
        title,
        t.name(),
        Profiles.titleOf(t.title(), t.name()),
        Profiles.holds(t.holds(), values),
        t.on() == null ? null : pole(t.on(), outlet, device),
        t.byHand());
  }

  private @Nullable Terminal ownPole(Tree.Ref ref, Word outlet, List<Terminal> terminals) {
    List<Terminal> poles = new ArrayList<>(terminals);
    poles.removeIf(terminal -> terminal.kind() != TerminalKind.POLE);
    Word name = ref.parts().get(ref.parts().size() - 1);
    for (Terminal pole : poles) {
      if (ref.parts().size() == 1 && pole.name().text().equals(name.text())) {
        names.use(name, pole.name());
        return pole;
      }
    }
    String where = " on the outlet '" + outlet.text() + "'";
    Scope.unknownAmong(
        diagnostics, name, "pole", where, poles.stream().map(Terminal::name).toList());
    return null;
  }

  /** The pole that a contact floats on: of its own outlet, or of the outlet that is named. */
  private @Nullable String pole(Tree.Ref ref, Tree.Outlet own, Tree.Device device) {
    List<Word> parts = ref.parts();
    Word name = parts.get(parts.size() - 1);
    Word on = parts.size() == 1 ? null : parts.get(parts.size() - 2);
    Tree.Outlet outlet = on == null ? own : outletOf(on, device);
    if (outlet == null) {
      return null;
    }
    List<String> poles = new ArrayList<>();
    for (Tree.Terminal t : outlet.terminals()) {
      if (t.kind() == TerminalKind.POLE && t.name().text().equals(name.text())) {
        names.use(name, t.name());
        return outlet.name().text() + "." + name.text();
      }
      if (t.kind() == TerminalKind.POLE) {
        poles.add(t.name().text());
      }
    }
    String where = " on the outlet '" + outlet.name().text() + "'";
    Scope.unknown(diagnostics, name, "pole", where, poles);
    return null;
  }

  private Tree.@Nullable Outlet outletOf(Word name, Tree.Device device) {
    List<String> known = new ArrayList<>();
    for (Tree.Outlet outlet : device.outlets()) {
      if (outlet.name().text().equals(name.text())) {
        names.use(name, outlet.name());
        return outlet;
      }
      known.add(outlet.name().text());
    }
    Scope.unknown(diagnostics, name, "outlet", known);
    return null;
  }

  private State state(Tree.State state) {
    require(state.enter(), state.name(), "state '%s' has no 'enter' line");
    if (state.enter() != null && state.enter().text().isBlank()) {
      diagnostics.say(
          Code.MISSING_ITEM,
          state.enter().span(),
          "the text of how to enter the state '%s' is blank",
          state.name().text());
    }
    require(
        state.leave(),
        state.name(),
        "state '%s' has no 'leave' line; the generator would stay in it");
    return new State(
        state.name(),
        Profiles.titleOf(state.title(), state.name()),
        state.enter() == null ? "" : state.enter().text(),
        state.leave() == null ? "" : state.leave().text());
  }

  private void require(@Nullable Word item, Word owner, String format) {
    if (item == null) {
      diagnostics.say(Code.MISSING_ITEM, owner.span(), format, owner.text());
    }
  }

  private Mode mode(Tree.Mode mode, List<Outlet> all) {
    List<Outlet> outlets = new ArrayList<>();
    mode.outlets().forEach(o -> addOutlet(o, all, outlets));
    Outlet through = mode.through() == null ? null : find(mode.through(), all);
    mode.activateBy().forEach(ref -> nameContact(ref, outlets, all));
    return new Mode(
        mode.name(),
        Profiles.titleOf(mode.title(), mode.name()),
        List.copyOf(outlets),
        through,
        mode.renamedFrom() == null ? null : mode.renamedFrom().text(),
        adjustable(mode),
        mode.tolerances(),
        duty(mode.duty()),
        mode.activateBy(),
        mode);
  }

  /** Each switches a check off where it is missing: of loads, of leads, of rests, of contacts. */
  private void requireRatings(Tree.Mode mode, Tree.Device device) {
    boolean told = false;
    for (Tree.Action action : device.actions()) {
      told |= action.name().text().equals("activate");
    }
    String what = "the mode '" + mode.name().text() + "'";
    List<Ratings.Unknown> unknown = mode.tolerances().unknown();
    new RequiredRatings(what, mode.name().span(), unknown, diagnostics)
        .need("load", "rated load", isLoaded(mode))
        .need("peak-voltage", "highest peak voltage", hasPeak(mode))
        .need("duty", "duty", mode.duty() != null)
        .need("activate", "contact that activates it", told || !mode.activateBy().isEmpty())
        .areGiven();
    for (Ratings.Unknown one : unknown) {
      if (one.called() == null) {
        values.quantity(one.rating());
      }
    }
  }

  private static boolean isLoaded(Tree.Mode mode) {
    return !mode.loads().isEmpty() || !mode.adjustable().terminations().isEmpty();
  }

  private static boolean hasPeak(Tree.Mode mode) {
    for (Tree.QuantityLimit line : mode.limits()) {
      String quantity = line.quantity().text();
      boolean upper = !(line.limit() instanceof LimitExpression.AtLeast);
      if (quantity.equals("peak-voltage") && upper || QuantityKind.find(quantity) == null) {
        return true; // a misspelt one may have been meant
      }
    }
    return false;
  }

  private Device.Adjustable adjustable(Tree.Mode mode) {
    QuantityKind kind =
        mode.settingQuantity() == null ? null : values.quantity(mode.settingQuantity());
    List<Amount> figures = new ArrayList<>();
    mode.setting().forEach(item -> figures.add(item.from()));
    boolean another =
        kind != null
            && mode.settingQuantity() != null
            && values.allOfAnother(kind, figures, mode.settingQuantity());
    Series setting =
        kind == null || another
            ? null
            : values.series(mode.setting(), kind.dimension(), "this setting");
    mode.setting().forEach(this::fewSteps);
    Series loads =
        mode.loads().isEmpty() ? null : values.series(mode.loads(), Dimension.RESISTANCE, "a load");
    return new Device.Adjustable(
        kind, setting, loads, Termination.of(mode.adjustable().terminations()));
  }

  /** Nobody turns a knob through more values than that: common practice, no source. */
  private static final Rational MOST_STEPS = Rational.of(10_000, 1);

  private void fewSteps(Tree.SeriesItem item) {
    Values quiet = new Values(new Diagnostics());
    Rational from = quiet.si(item.from());
    Rational to = item.to() == null ? null : quiet.si(item.to());
    Rational step = item.step() == null ? null : quiet.si(item.step());
    if (from != null
        && to != null
        && step != null
        && step.signum() > 0
        && to.minus(from).over(step).compareTo(MOST_STEPS) > 0) {
      diagnostics
          .say(
              Code.PREFIX_SLIP,
              item.span(),
              "this setting has %s values: is a unit wrong?",
              to.minus(from).over(step).floor().add(java.math.BigInteger.ONE))
          .hint("check the unit of each of the three figures");
    }
  }

  private void addOutlet(Word name, List<Outlet> all, List<Outlet> outlets) {
    Outlet outlet = find(name, all);
    if (outlet != null) {
      outlets.add(outlet);
    }
  }

  private @Nullable Outlet find(Word name, List<Outlet> all) {
    for (Outlet outlet : all) {
      if (outlet.name().text().equals(name.text())) {
        names.use(name, outlet.name());
        return outlet;
      }
    }
    Scope.unknown(diagnostics, name, "outlet", Named.names(all));
    return null;
  }

  /**
   * Records what an {@code activate by} names: a contact of the outlet before it, or of any outlet
   * of the mode. That each outlet has it is checked where the mode is tested.
   */
  private void nameContact(Tree.Ref ref, List<Outlet> outlets, List<Outlet> all) {
    List<Word> parts = ref.parts();
    Word name = parts.get(parts.size() - 1);
    Word on = parts.size() == 1 ? null : parts.get(parts.size() - 2);
    for (Outlet outlet : on == null ? outlets : all) {
      boolean meant = on == null || outlet.name().text().equals(on.text());
      Terminal contact = meant ? outlet.terminal(name.text()) : null;
      if (meant && on != null) {
        names.use(on, outlet.name());
      }
      if (contact != null) {
        names.use(name, contact.name());
      }
    }
  }

  private @Nullable Duty duty(Ratings.@Nullable Duty duty) {
    if (duty == null) {
      return null;
    }
    if (duty.on() == null || duty.off() == null) {
      return new Duty(null, null);
    }
    Rational on = values.positive(duty.on(), Dimension.TIME, "an on-time");
    Rational off = values.si(duty.off(), Dimension.TIME, "a rest");
    if (on != null && off != null && on.compareTo(off) > 0) {
      diagnostics
          .say(
              Code.PREFIX_SLIP,
              duty.span(),
              "the output may be on for %s s but rests only %s s after it: are they swapped, or is a"
                  + " unit wrong?",
              on.toPlain(),
              off.toPlain())
          .hint("generators rest for longer than they deliver");
    }
    return on == null || off == null ? null : new Duty(on, off);
  }
}
