package passband.detect;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.model.Analyzer;
import passband.model.Lead;
import passband.model.Terminal;
import passband.plan.Delivery;
import passband.plan.Move;
import passband.plan.Plan;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.plan.Wire;

/**
 * Leads that are not where the setup has them: from the run at which one is put on wrongly to the
 * one at which that is put right. What is read then is asked of the nets that remain.
 */
final class LeadEffects {
  private final Plan plan;
  private final SheetLines lines;
  private final Rewired rewired;

  LeadEffects(SheetLines lines) {
    this.plan = lines.plan();
    this.lines = lines;
    this.rewired = new Rewired(plan);
  }

  /** The instances of a size; null for an effect that is none of these. */
  @Nullable List<Instance> of(Fault fault, Fault.Size size) {
    return switch (fault.effect()) {
      case "lead-jack" -> each(fault, size, false, true);
      case "lead-missing" -> each(fault, size, false, false);
      case "link-missing" -> each(fault, size, true, false);
      default -> null;
    };
  }

  /**
   * One for each time that a lead or link is taken in hand, and put somewhere. Where all hangs
   * together as it is to, nothing is wrong.
   */
  private List<Instance> each(Fault fault, Fault.Size size, boolean links, boolean further) {
    Map<String, List<Instance.Change>> slips = new LinkedHashMap<>();
    List<Stage.Run> runs = lines.runs();
    for (int i = 0; i < runs.size(); i++) {
      for (Move move : runs.get(i).moves()) {
        boolean isOne = move.kind() != Move.Kind.REMOVE && move.lead().link() == links;
        Slip slip = isOne ? slip(move, further) : null;
        List<Stage.Run> until =
            slip == null ? List.of() : until(slip, runs.subList(i, runs.size()));
        if (slip != null && until.stream().anyMatch(slip::matters)) {
          String where = runs.get(i).id() + ": " + move.lead().name().text();
          slips.put(where, changes(slip, until));
        }
      }
    }
    return Instance.each(fault, size, slips);
  }

  /** The runs until the slip is put right. */
  private static List<Stage.Run> until(Slip slip, List<Stage.Run> runs) {
    int end = 1;
    while (end < runs.size() && runs.get(end).moves().stream().noneMatch(slip::ends)) {
      end++;
    }
    return runs.subList(0, end);
  }

  /**
   * What is done wrongly with a lead.
   *
   * @param at the end that goes elsewhere; null for a lead that is left off
   * @param next where it goes
   */
  private record Slip(Lead lead, @Nullable Terminal at, @Nullable Terminal next) {
    /** Whether a move puts it right: of one that is off anything, else that of the end itself. */
    boolean ends(Move move) {
      boolean same = move.lead().name().text().equals(lead.name().text());
      boolean other = move.kind() == Move.Kind.MOVE && at != null && !move.from().same(at);
      return same && !other;
    }

    /** Whether anything hangs together otherwise, or an accessory is away. */
    boolean matters(Stage.Run run) {
      Setup own = run.setup();
      return own != null && (lead.accessory() || !in(own).nets().equals(own.nets()));
    }

    /** The setup as it is. */
    Setup in(Setup setup) {
      List<Wire> wires = new ArrayList<>();
      for (Wire wire : setup.wires()) {
        boolean own = wire.lead().name().text().equals(lead.name().text());
        if (!own) {
          wires.add(wire);
        } else if (at != null && next != null) {
          Terminal from = wire.from().same(at) ? next : wire.from();
          Terminal to = wire.to().same(at) ? next : wire.to();
          wires.add(new Wire(wire.lead(), from, to, wire.span()));
        }
      }
      return new Setup(setup.name(), setup.title(), wires, setup.whole(), setup.span());
    }
  }

  /** Null where there is no other jack or key that the end would go into. */
  private @Nullable Slip slip(Move move, boolean further) {
    if (!further) {
      return new Slip(move.lead(), null, null);
    }
    Terminal end = move.to().onAnalyzer() ? move.to() : move.from();
    boolean isEnd = end.onAnalyzer() && (move.kind() != Move.Kind.MOVE || end == move.to());
    Terminal next = isEnd && !move.lead().accessory() ? next(end) : null;
    return next == null ? null : new Slip(move.lead(), end, next);
  }

  private @Nullable Terminal next(Terminal end) {
    for (Analyzer unit : plan.instruments().units()) {
      List<Terminal> same = new ArrayList<>(unit.terminals());
      same.removeIf(terminal -> terminal.kind() != end.kind());
      for (int i = 0; i < same.size(); i++) {
        if (same.get(i).same(end)) {
          return same.size() < 2 ? null : same.get((i + 1) % same.size());
        }
      }
    }
    return null;
  }

  /** What the readings of some runs show. */
  private List<Instance.Change> changes(Slip slip, List<Stage.Run> runs) {
    List<Instance.Change> changes = new ArrayList<>();
    for (SheetLine line : lines.read()) {
      Setup own = runs.contains(line.run()) ? line.run().setup() : null;
      Double truth = own == null ? null : rewired.truth(line, own, slip.in(own));
      if (truth != null) {
        changes.add(Instance.Change.to(line, truth));
      }
    }
    for (Unjudged.Asked asked : lines.asked()) {
      Stage.Run run = asked.line().run();
      Setup own = runs.contains(run) ? run.setup() : null;
      boolean alarm = run.output() == Delivery.INHIBITED && asked.isChoice();
      boolean quiet = own != null && alarm && rewired.isQuiet(asked.line(), own, slip.in(own));
      boolean looked = own != null && asked.isCalled("wiring") && slip.matters(run);
      if (quiet || looked) {
        changes.add(asked.wrong());
      }
    }
    return changes;
  }
}
