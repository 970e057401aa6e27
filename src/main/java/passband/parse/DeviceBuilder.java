package passband.parse;

import java.util.ArrayList;
import java.util.List;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.parse.antlr.PassbandParser.*;
import passband.source.Span;
import passband.syntax.Ratings;
import passband.syntax.TerminalKind;
import passband.syntax.Tree;
import passband.syntax.Word;

/** From the contexts of a device to its part of the tree. */
final class DeviceBuilder {
  private final Terminals leaves;
  private final ItemBuilder build;
  private final MeasureBuilder measures;

  private final Diagnostics diagnostics;

  DeviceBuilder(Terminals leaves, ItemBuilder build, Diagnostics diagnostics) {
    this.leaves = leaves;
    this.build = build;
    this.measures = new MeasureBuilder(leaves, diagnostics);
    this.diagnostics = diagnostics;
  }

  Tree.Device device(DeviceContext device) {
    List<DeviceItemContext> items = device.deviceItem();
    List<Tree.Outlet> outlets = new ArrayList<>();
    List<Tree.Mode> modes = new ArrayList<>();
    List<Tree.State> states = new ArrayList<>();
    for (DeviceItemContext item : items) {
      if (item.outlet() != null && leaves.whole(item.outlet().outletHead())) {
        outlets.addAll(outlets(item.outlet()));
      } else if (item.mode_() != null && leaves.whole(item.mode_().modeHead())) {
        modes.addAll(modes(item.mode_()));
      } else if (item.state() != null && leaves.whole(item.state().stateHead())) {
        states.add(state(item.state()));
      }
    }
    return new Tree.Device(
        leaves.name(device.deviceHead().name()),
        leaves.optionalText(device.deviceHead().TEXT()),
        outlets,
        modes,
        build.parts(items, DeviceItemContext::action, build::action),
        states,
        build.parts(items, DeviceItemContext::extraSetting, build::extraSetting),
        build.headed(
            items, DeviceItemContext::measure, MeasureContext::measureHead, measures::measure),
        build.parts(items, DeviceItemContext::bound, this::bound),
        build.parts(items, DeviceItemContext::allow, build::allow),
        leaves.line(device.deviceHead()));
  }

  private List<Tree.Outlet> outlets(OutletContext outlet) {
    List<Tree.Terminal> terminals =
        build.among(
            outlet.outletItem(),
            TerminalContext.class,
            t ->
                new Tree.Terminal(
                    t.POLE() != null
                        ? TerminalKind.POLE
                        : t.EARTH() != null ? TerminalKind.EARTH : TerminalKind.CONTACT,
                    leaves.name(t.name()),
                    leaves.optionalText(t.TEXT()),
                    t.ref() == null ? null : leaves.ref(t.ref()),
                    t.HAND() != null,
                    leaves.optionalBare(t.NUMBER()),
                    leaves.line(t)));
    List<Tree.Join> joins =
        build.among(
            outlet.outletItem(),
            OutletJoinContext.class,
            j -> new Tree.Join(leaves.ref(j.ref(0)), leaves.ref(j.ref(1)), leaves.line(j)));
    List<Tree.QuantityLimit> limits =
        build.among(outlet.outletItem(), OutletBoundContext.class, b -> bound(b.bound()));
    return build.each(
        outlet.outletHead().outletName(),
        name -> {
          List<NameContext> words = name.name();
          Word renamed = words.size() > 1 ? leaves.name(words.get(1)) : null;
          return new Tree.Outlet(
              leaves.name(words.get(0)),
              leaves.optionalText(name.TEXT()),
              renamed,
              terminals,
              joins,
              limits,
              leaves.span(name));
        });
  }

  /** The modes of a block: several have all but their names in common. */
  private List<Tree.Mode> modes(Mode_Context mode) {
    ModeHeadContext head = mode.modeHead();
    List<ModeNameContext> names = head.modeName();
    if (names.size() > 1 && head.RENAMED() != null) {
      diagnostics
          .say(
              Code.SYNTAX,
              leaves.name(head.name(head.name().size() - 1)).span(),
              "it is not clear which of several modes was renamed")
          .hint("write 'renamed from NAME' after that mode's title");
    }
    return build.each(names, name -> mode(mode, name, names.size() == 1));
  }

  private Tree.Mode mode(Mode_Context mode, ModeNameContext name, boolean only) {
    ModeHeadContext head = mode.modeHead();
    List<ModeItemContext> items = mode.modeItem();
    boolean own = name.RENAMED() != null;
    NameContext renamed =
        own
            ? name.name(1)
            : only && head.RENAMED() != null ? head.name(head.name().size() - 1) : null;
    return new Tree.Mode(
        leaves.name(name.name(0)),
        leaves.optionalText(name.TEXT()),
        leaves.names(head.names()),
        head.THROUGH() == null ? null : leaves.name(head.name(0)),
        renamed == null ? null : leaves.name(renamed),
        adjustable(items),
        tolerances(items),
        build.single(
            build.among(items, ModeDutyContext.class, this::duty),
            "the mode's duty",
            Ratings.Duty::span),
        refs(items),
        build.among(items, ModeAllowContext.class, a -> build.allow(a.allow())),
        leaves.line(head));
  }

  private Tree.Adjustable adjustable(List<ModeItemContext> items) {
    ModeSettingContext setting =
        build.single(
            build.among(items, ModeSettingContext.class, s -> s),
            "the mode's setting",
            leaves::line);
    ModeLoadContext load =
        build.single(
            build.among(items, ModeLoadContext.class, s -> s), "the mode's load", leaves::line);
    return new Tree.Adjustable(
        setting == null ? null : leaves.name(setting.name()),
        setting == null ? List.of() : leaves.series(setting.series()),
        load == null ? List.of() : leaves.resistances(load.loadSeries()),
        load == null ? List.of() : leaves.terminations(load.loadSeries()));
  }

  private Tree.Tolerances tolerances(List<ModeItemContext> items) {
    List<Tree.QuantityLimit> outputs =
        build.among(
            items,
            ModeOutputContext.class,
            o -> quantityLimit(o.name(), o.limit(), leaves.line(o)));
    return new Tree.Tolerances(
        build.single(outputs, "the mode's output", Tree.QuantityLimit::span),
        build.among(
            items, ModeLimitContext.class, l -> quantityLimit(l.name(), l.limit(), leaves.line(l))),
        build.among(
            items,
            ModeUnknownContext.class,
            u -> leaves.unknown(leaves.name(u.name()), u.unknown(), leaves.line(u))));
  }

  private Tree.QuantityLimit bound(BoundContext bound) {
    return quantityLimit(bound.name(), bound.limit(), leaves.line(bound));
  }

  private Tree.QuantityLimit quantityLimit(NameContext name, LimitContext limit, Span line) {
    return new Tree.QuantityLimit(leaves.name(name), build.limit(limit), line);
  }

  private List<Tree.Ref> refs(List<ModeItemContext> items) {
    List<Tree.Ref> refs = new ArrayList<>();
    for (List<Tree.Ref> line :
        build.among(items, ModeActivateContext.class, a -> build.each(a.ref(), leaves::ref))) {
      refs.addAll(line);
    }
    return refs;
  }

  private Ratings.Duty duty(ModeDutyContext duty) {
    return duty.CONTINUOUS() != null
        ? new Ratings.Duty(null, null, leaves.line(duty))
        : new Ratings.Duty(
            leaves.amount(duty.amount(0)), leaves.amount(duty.amount(1)), leaves.line(duty));
  }

  private Tree.State state(StateContext state) {
    Word enter = null;
    Word leave = null;
    for (StateTextContext text : build.among(state.stateItem(), StateTextContext.class, t -> t)) {
      if (text.ENTER() != null) {
        enter = leaves.text(text.TEXT());
      } else {
        leave = leaves.text(text.TEXT());
      }
    }
    return new Tree.State(
        leaves.name(state.stateHead().name()),
        leaves.optionalText(state.stateHead().TEXT()),
        enter,
        leave,
        leaves.line(state.stateHead()));
  }
}
