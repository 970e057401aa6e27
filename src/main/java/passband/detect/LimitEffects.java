package passband.detect;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.limit.Limit;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.Instruments;
import passband.model.Terminal;
import passband.plan.Act;
import passband.plan.Contacts;
import passband.plan.Delivery;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.QuantityKind;
import passband.quantity.Real;
import passband.syntax.LimitExpression;
import passband.syntax.Tree;

/** Faults of the generator beside the power of its output. */
final class LimitEffects {
  private final SheetLines lines;
  private final OutputEffects output;

  LimitEffects(SheetLines lines, OutputEffects output) {
    this.lines = lines;
    this.output = output;
  }

  /** The instances of a size; null for an effect that is none of these. */
  @Nullable List<Instance> of(Fault fault, Fault.Size size) {
    return switch (fault.effect()) {
      case "waveform" -> waveform(fault, size);
      case "outlet-dead" -> outletDead(fault, size);
      case "contact-dead" -> contactDead(fault, size);
      case "outlets-exchanged" -> exchanged(fault, size);
      case "elsewhere" -> elsewhere(fault, size);
      case "without-contact" -> withoutContact(fault, size);
      case "above-limit" -> aboveLimit(fault, size);
      case "no-value" -> noValue(fault, size);
      case "inhibited" -> inhibited(fault, size);
      case "intermittent" -> intermittent(fault, size);
      case "display" -> display(fault, size);
      default -> null;
    };
  }

  /** Readings of output, with a nominal value or not: nothing is read of a dead outlet. */
  private List<SheetLine> delivered() {
    return lines.delivered();
  }

  private List<Instance> outletDead(Fault fault, Fault.Size size) {
    List<Instance> instances = new ArrayList<>();
    for (Outlet outlet : lines.plan().device().outlets()) {
      if (delivers(outlet)) {
        List<Instance.Change> changes = new ArrayList<>();
        for (SheetLine line : delivered()) {
          if (line.outletName().equals(outlet.name().text())) {
            changes.add(Instance.Change.to(line, 0));
          }
        }
        instances.add(new Instance(fault, size, outlet.name().text(), changes));
      }
    }
    return instances;
  }

  /** Each contact that activates some mode; caught where a row activates by it. */
  private List<Instance> contactDead(Fault fault, Fault.Size size) {
    Map<String, List<Instance.Change>> contacts = new LinkedHashMap<>();
    for (Mode mode : lines.plan().device().modes()) {
      for (Outlet outlet : mode.outlets()) {
        mode.activateBy()
            .forEach(
                ref -> {
                  Terminal contact = Contacts.named(lines.plan().device(), outlet, ref);
                  if (contact != null) {
                    contacts.putIfAbsent(contact.id(), new ArrayList<>());
                  }
                });
      }
    }
    for (SheetLine line : delivered()) {
      Terminal contact = contact(line.point());
      if (contact != null) {
        contacts
            .computeIfAbsent(contact.id(), c -> new ArrayList<>())
            .add(Instance.Change.to(line, 0));
      }
    }
    return Instance.each(fault, size, contacts);
  }

  /** The contact that a point activates by; null where none is known. */
  static @Nullable Terminal contact(Point point) {
    for (PlanStep step : point.steps()) {
      if (step.act() instanceof Act.Activate activate && activate.contact() != null) {
        return activate.contact();
      }
    }
    return null;
  }

  private List<Instance> exchanged(Fault fault, Fault.Size size) {
    List<Instance> instances = new ArrayList<>();
    List<Outlet> outlets = lines.plan().device().outlets();
    for (int i = 0; i < outlets.size(); i++) {
      for (int j = i + 1; j < outlets.size(); j++) {
        Outlet a = outlets.get(i);
        Outlet b = outlets.get(j);
        if (lines.plan().device().modes().stream().anyMatch(m -> m.isOn(a) && m.isOn(b))) {
          List<Instance.Change> changes = new ArrayList<>();
          for (SheetLine line : delivered()) {
            String at = line.outletName();
            if (at.equals(a.name().text()) || at.equals(b.name().text())) {
              changes.add(Instance.Change.to(line, 0));
            }
          }
          String where = a.name().text() + " and " + b.name().text();
          instances.add(new Instance(fault, size, where, changes));
        }
      }
    }
    return instances;
  }

  /** Read only where a reading of output is taken while nothing activates. */
  private List<Instance> withoutContact(Fault fault, Fault.Size size) {
    List<Instance.Change> changes = new ArrayList<>();
    for (SheetLine line : lines.of(SheetLine.Kind.OTHER)) {
      boolean reads =
          SheetLines.RMS.contains(line.limit().quantity())
              && line.run().output() == Delivery.OFF
              && line.run().outlet() != null
              && line.limit().exact().upper() != null;
      if (reads) {
        changes.add(Instance.Change.to(line, full(line)));
      }
    }
    return List.of(new Instance(fault, size, "every outlet", changes));
  }

  private boolean delivers(Outlet outlet) {
    return lines.plan().device().modes().stream().anyMatch(mode -> mode.isOn(outlet));
  }

  /**
   * Whether the generator has what is not read. An alarm of contact quality needs a return of
   * several poles; output may be inhibited by other means as well. A generator of pulses alone, set
   * in joules, has no output that could leak steadily or not stop.
   */
  private boolean has(String over) {
    List<Mode> modes = lines.plan().device().modes();
    return switch (over) {
      case "trip" ->
          modes.stream().anyMatch(m -> m.through() != null && m.through().poles().size() > 1);
      case "hf-leakage", "time" -> !modes.stream().allMatch(LimitEffects::isPulse);
      default -> true;
    };
  }

  /** Whether a mode delivers a pulse, which ends by itself: a time at it is another one. */
  static boolean isPulse(Mode mode) {
    QuantityKind kind = mode.settingKind();
    return kind != null && kind.name().equals("energy");
  }

  private List<Instance> orNotRead(Fault fault, Fault.Size size, List<Instance> instances) {
    return instances.isEmpty() && has(fault.over())
        ? List.of(Instance.notRead(fault, size, fault.over()))
        : instances;
  }

  /** Read only where a run reads output at an outlet while another one delivers. */
  private List<Instance> elsewhere(Fault fault, Fault.Size size) {
    List<Instance.Change> changes = new ArrayList<>();
    for (SheetLine line : lines.of(SheetLine.Kind.OUTPUT)) {
      Outlet read = line.run().outlet();
      Outlet delivers = line.outlet();
      boolean apart =
          read != null && delivers != null && !read.name().text().equals(delivers.name().text());
      if (apart && line.limit().exact().upper() != null) {
        changes.add(Instance.Change.to(line, Math.sqrt(size.value()) * full(line)));
      }
    }
    boolean several = lines.plan().device().outlets().stream().filter(this::delivers).count() > 1;
    return several || !changes.isEmpty()
        ? List.of(new Instance(fault, size, "the outlet not in use", changes))
        : List.of();
  }

  private List<SheetLine> kindOf(Fault fault) {
    List<SheetLine> some =
        lines.of(
            switch (fault.over()) {
              case "peak" -> SheetLine.Kind.PEAK;
              case "hf-leakage" -> SheetLine.Kind.HF_LEAKAGE;
              case "mains-leakage" -> SheetLine.Kind.MAINS_LEAKAGE;
              case "trip" -> SheetLine.Kind.TRIP;
              case "time" -> SheetLine.Kind.TIME;
              default -> throw new IllegalArgumentException(fault.over());
            });
    some.removeIf(line -> line.kind() == SheetLine.Kind.TIME && isPulse(line.mode()));
    return some;
  }

  private static String title(SheetLine line) {
    String mode = line.point().mode() == null ? "" : line.mode().name().text() + " ";
    return mode + line.outletName();
  }

  private List<Instance> aboveLimit(Fault fault, Fault.Size size) {
    Map<String, List<Instance.Change>> groups = new LinkedHashMap<>();
    for (SheetLine line : kindOf(fault)) {
      Real upper = line.limit().exact().upper();
      if (upper != null) {
        groups
            .computeIfAbsent(title(line) + " " + line.limit().quantity(), g -> new ArrayList<>())
            .add(Instance.Change.to(line, upper.doubleValue() * size.value()));
      }
    }
    return grouped(fault, size, groups);
  }

  private List<Instance> noValue(Fault fault, Fault.Size size) {
    Map<String, List<Instance.Change>> groups = new LinkedHashMap<>();
    for (SheetLine line : kindOf(fault)) {
      groups
          .computeIfAbsent(title(line), g -> new ArrayList<>())
          .add(Instance.Change.to(line, Double.NaN));
    }
    for (Stage.Run run : fault.over().equals("trip") ? lines.runs() : List.<Stage.Run>of()) {
      List<Instance.Change> choices = run.output() == Delivery.INHIBITED ? choices(run) : List.of();
      if (!choices.isEmpty()) {
        groups.computeIfAbsent(run.id(), g -> new ArrayList<>()).addAll(choices);
      }
    }
    return grouped(fault, size, groups);
  }

  private List<Instance> grouped(
      Fault fault, Fault.Size size, Map<String, List<Instance.Change>> groups) {
    List<Instance> instances = new ArrayList<>();
    groups.forEach(
        (where, changes) -> instances.add(new Instance(fault, size, where.strip(), changes)));
    return orNotRead(fault, size, instances);
  }

  /** Where output is inhibited, a reading of it or a choice that has one right answer shows it. */
  private List<Instance> inhibited(Fault fault, Fault.Size size) {
    List<Instance> instances = new ArrayList<>();
    for (Stage.Run run : lines.runs()) {
      if (run.output() != Delivery.INHIBITED) {
        continue;
      }
      List<Instance.Change> changes = new ArrayList<>();
      for (SheetLine line : lines.of(SheetLine.Kind.INHIBITED)) {
        if (line.run() == run) {
          changes.add(Instance.Change.to(line, full(line)));
        }
      }
      changes.addAll(choices(run));
      instances.add(new Instance(fault, size, run.id(), changes));
    }
    return orNotRead(fault, size, instances);
  }

  /** What is asked while output must not come is about the alarm and the output. */
  private List<Instance.Change> choices(Stage.Run run) {
    List<Instance.Change> wrong = new ArrayList<>();
    for (Unjudged.Asked asked : lines.asked()) {
      if (asked.line().run() == run && asked.isChoice()) {
        wrong.add(asked.wrong());
      }
    }
    return wrong;
  }

  /** What the output would show: the power that is set, into the load. */
  static double full(SheetLine line) {
    Limit limit = line.limit();
    Real upper = limit.exact().upper();
    double most = upper == null ? 0 : upper.doubleValue();
    if (line.ohms() == null || Double.isNaN(line.setting())) {
      return 2 * most;
    }
    double ohms = line.ohms().doubleValue();
    return switch (limit.quantity()) {
      case "current" -> Math.sqrt(line.setting() / ohms);
      case "voltage" -> Math.sqrt(line.setting() * ohms);
      default -> line.setting();
    };
  }

  /** Each activation fails by itself: it is activations that count, not readings. */
  private List<Instance> intermittent(Fault fault, Fault.Size size) {
    List<Instance.Change> changes = new ArrayList<>();
    for (List<SheetLine> some : List.of(delivered(), lines.peaks())) {
      some.forEach(line -> changes.add(Instance.Change.to(line, 0)));
    }
    return List.of(
        new Instance(
            fault,
            size,
            "all modes",
            changes,
            (kernel, visit) -> {
              long activations = visit.activationsThatFail(kernel);
              return activations == 0
                  ? Chance.NEVER
                  : Chance.ofPassing(
                      Math.pow(1 - size.value(), activations), Chance.Proof.QUADRATURE);
            }));
  }

  /** Only what the generator itself shows is off; the output is right. */
  private List<Instance> display(Fault fault, Fault.Size size) {
    List<Instance.Change> changes = new ArrayList<>();
    for (SheetLine line : lines.output()) {
      if (Instruments.DEVICE.equals(line.limit().read().by())) {
        changes.add(Instance.Change.to(line, line.scaled(output.factor(line, size))));
      }
    }
    return lines.plan().device().measures().isEmpty()
        ? List.of()
        : List.of(new Instance(fault, size, "its display", changes));
  }

  /**
   * The power stays; what differs is the peak: that of the other mode at its limit, in proportion
   * to the root of the power.
   */
  private List<Instance> waveform(Fault fault, Fault.Size size) {
    List<Instance> instances = new ArrayList<>();
    lines
        .places()
        .forEach(
            (place, some) -> {
              for (Mode other : lines.plan().device().modes()) {
                boolean beside =
                    some.get(0).outlet() != null
                        && other.isOn(some.get(0).outlet())
                        && !other.equals(some.get(0).mode());
                if (beside) {
                  List<Instance.Change> changes = new ArrayList<>();
                  some.forEach(line -> changes.add(Instance.Change.to(line, line.nominal())));
                  changes.addAll(peaks(place, other));
                  String where = place.text() + " as " + other.name().text();
                  instances.add(new Instance(fault, size, where, changes));
                }
              }
            });
    return instances;
  }

  private List<Instance.Change> peaks(Place place, Mode other) {
    List<Instance.Change> changes = new ArrayList<>();
    for (SheetLine line : lines.peaks()) {
      double peak = peak(other, line);
      if (Place.of(line).equals(place) && !Double.isNaN(peak)) {
        changes.add(Instance.Change.to(line, peak));
      }
    }
    return changes;
  }

  /** The other mode's own limit of the peak, on the sheet or in its profile; else NaN. */
  private double peak(Mode other, SheetLine of) {
    for (SheetLine line : lines.of(SheetLine.Kind.PEAK)) {
      Real upper = line.limit().exact().upper();
      boolean same = line.limit().quantity().equals(of.limit().quantity());
      if (same && line.mode().equals(other) && upper != null) {
        return upper.doubleValue() * share(other, of);
      }
    }
    return of.limit().quantity().equals("peak-voltage") ? peakOf(other, of) : Double.NaN;
  }

  /** The root of the share of the other mode's greatest power that is set. */
  private static double share(Mode other, SheetLine of) {
    double most = other.setting() == null ? 1 : other.setting().highest().doubleValue();
    return Math.sqrt(Double.isNaN(of.setting()) ? 1 : Math.min(1, of.setting() / most));
  }

  /** What a mode's profile allows of the peak voltage, at the power that is set; else NaN. */
  static double peakOf(@Nullable Mode other, SheetLine of) {
    for (Tree.QuantityLimit limit :
        other == null ? List.<Tree.QuantityLimit>of() : other.limits()) {
      if (limit.quantity().text().equals("peak-voltage")
          && limit.limit() instanceof LimitExpression.AtMost most
          && other != null) {
        Arithmetic bound = Arithmetic.of(most.upper(), List.of(), Map.of());
        return bound == null ? Double.NaN : bound.at(new double[0]) * share(other, of);
      }
    }
    return Double.NaN;
  }
}
