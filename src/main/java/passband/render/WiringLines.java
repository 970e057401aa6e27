package passband.render;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import passband.model.Lead;
import passband.model.Terminal;
import passband.plan.Move;
import passband.plan.Plan;
import passband.plan.Setup;
import passband.plan.Wire;
import passband.words.Language;

/**
 * The rows of the table beside a wiring drawing: what comes off, what moves, what is connected, in
 * the order in which it is done; then what stays.
 */
final class WiringLines {
  private final Language language;
  private final Setup setup;
  private final boolean severalInstruments;
  private final Map<String, String> marks = new HashMap<>();

  /** The instrument on which all jacks of the setup are; null for none or several. */
  private final @Nullable Terminal only;

  WiringLines(Plan plan, Setup setup) {
    this.language = plan.language();
    this.setup = setup;
    this.severalInstruments = plan.instruments().units().size() > 1;
    this.only = onlyInstrument(setup);
    for (Lead lead : plan.usedLeads()) {
      marks.put(lead.name().text(), Plan.letter(marks.size()));
    }
  }

  /** A jack of it. */
  private static @Nullable Terminal onlyInstrument(Setup setup) {
    List<Terminal> jacks =
        setup.wires().stream()
            .flatMap(wire -> Stream.of(wire.from(), wire.to()))
            .filter(Terminal::onAnalyzer)
            .toList();
    long owners = jacks.stream().map(Terminal::owner).distinct().count();
    return owners == 1 ? jacks.get(0) : null;
  }

  /** The heading of the column of jacks: it names the instrument where there are several. */
  String jacks() {
    return severalInstruments && only != null
        ? language.of("wiring.jack.of", only.ownerTitle())
        : language.of("wiring.jack");
  }

  /**
   * The rows.
   *
   * @param moves what leads to the setup
   * @param asks the ticks of the moves, in their order
   */
  List<Sheet.WireLine> rows(List<Move> moves, List<Sheet.Ask> asks) {
    List<Sheet.WireLine> lines = new ArrayList<>();
    Set<String> touched = new LinkedHashSet<>();
    for (int i = 0; i < moves.size(); i++) {
      Move move = moves.get(i);
      touched.add(move.lead().name().text());
      lines.add(line(move.lead(), ends(move), change(move), asks.get(i)));
    }
    for (Wire wire : setup.wires()) {
      if (touched.add(wire.lead().name().text())) {
        lines.add(line(wire.lead(), at(terminals(wire.lead())), language.of("wiring.stays"), null));
      }
    }
    return lines;
  }

  private String change(Move move) {
    return switch (move.kind()) {
      case REMOVE -> language.of("wiring.off");
      case MOVE -> language.of("wiring.moves");
      case CONNECT -> language.of("wiring.new");
    };
  }

  /** Where an end of a lead is to be, and the terminal that it leaves for it; null for none. */
  private record LeadEnd(Terminal at, @Nullable Terminal from) {}

  private static List<LeadEnd> at(List<Terminal> terminals) {
    return terminals.stream().map(terminal -> new LeadEnd(terminal, null)).toList();
  }

  private List<LeadEnd> ends(Move move) {
    if (!move.at().isEmpty()) {
      return at(move.at());
    }
    if (move.kind() != Move.Kind.MOVE) {
      return at(List.of(move.from(), move.to()));
    }
    List<LeadEnd> ends = new ArrayList<>();
    for (Terminal terminal : terminals(move.lead())) {
      if (!terminal.same(move.to())) {
        ends.add(new LeadEnd(terminal, null));
      }
    }
    ends.add(new LeadEnd(move.to(), move.from()));
    return ends;
  }

  /** All that a lead touches in the setup, each terminal once. */
  private List<Terminal> terminals(Lead lead) {
    List<Terminal> terminals = new ArrayList<>();
    for (Wire wire : setup.wires()) {
      if (wire.lead().name().text().equals(lead.name().text())) {
        for (Terminal end : List.of(wire.from(), wire.to())) {
          if (terminals.stream().noneMatch(end::same)) {
            terminals.add(end);
          }
        }
      }
    }
    return terminals;
  }

  private Sheet.WireLine line(
      Lead lead, List<LeadEnd> ends, String change, Sheet.@Nullable Ask move) {
    List<LeadEnd> terminals = ends.stream().filter(end -> !end.at.onAnalyzer()).toList();
    List<LeadEnd> jacks = ends.stream().filter(end -> end.at.onAnalyzer()).toList();
    String mark = marks.getOrDefault(lead.name().text(), "");
    return new Sheet.WireLine(mark, lead.title(), places(terminals), places(jacks), change, move);
  }

  /** Ends that stay on one outlet or instrument are said together. */
  private List<Sheet.WireEnd> places(List<LeadEnd> ends) {
    Map<String, List<Terminal>> together = new LinkedHashMap<>();
    List<Sheet.WireEnd> places = new ArrayList<>();
    for (LeadEnd end : ends) {
      if (end.from == null) {
        together.computeIfAbsent(end.at.owner(), owner -> new ArrayList<>()).add(end.at);
      }
    }
    together.values().forEach(some -> places.add(new Sheet.WireEnd(place(some), null)));
    for (LeadEnd end : ends) {
      if (end.from != null) {
        String from = language.of("wiring.from", place(List.of(end.from)));
        places.add(new Sheet.WireEnd(place(List.of(end.at)), from));
      }
    }
    return places;
  }

  /** The outlet is said with its terminals, an instrument where the column's heading does not. */
  private String place(List<Terminal> some) {
    Terminal first = some.get(0);
    String titles = String.join(", ", some.stream().map(Terminal::title).toList());
    boolean said = only == null ? !severalInstruments : first.owner().equals(only.owner());
    if (first.onAnalyzer() && said) {
      return titles;
    }
    return first.ownerTitle() + (some.size() == 1 ? ", " : ": ") + titles;
  }
}
