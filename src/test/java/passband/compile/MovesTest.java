package passband.compile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import passband.model.Lead;
import passband.model.Terminal;
import passband.plan.Move;
import passband.plan.Wire;
import passband.syntax.LeadKind;
import passband.syntax.TerminalKind;
import passband.syntax.Word;

/** Leads moved from one random wiring to another. */
class MovesTest {
  private static final int LEADS = 6;
  private static final int TERMINALS = 14;

  /** The moves lead from one wiring to the other, and no lead comes where another still is. */
  @Test
  void eachLeadComesToFreeTerminals() {
    Random random = new Random(20261127);
    int moved = 0;
    for (int i = 0; i < 5000; i++) {
      List<Wire> before = wiring(random);
      List<Wire> after = wiring(random);
      Map<String, TreeSet<String>> leads = ends(before);
      for (Move move : Moves.between(before, after)) {
        String lead = move.lead().title();
        TreeSet<String> now = leads.computeIfAbsent(lead, none -> new TreeSet<>());
        switch (move.kind()) {
          case REMOVE -> assertEquals(leads.remove(lead), ends(move));
          case MOVE -> {
            assertTrue(now.remove(move.from().id()), move.text());
            free(leads, move.to());
            now.add(move.to().id());
            moved++;
          }
          case CONNECT -> {
            assertEquals(new TreeSet<>(), now);
            free(leads, move.from());
            free(leads, move.to());
            now.addAll(ends(move));
          }
        }
      }
      assertEquals(ends(after), leads);
    }
    assertTrue(moved > 1000, "only " + moved);
  }

  private static void free(Map<String, TreeSet<String>> leads, Terminal terminal) {
    assertTrue(
        leads.values().stream().noneMatch(ends -> ends.contains(terminal.id())),
        () -> terminal.id() + " in " + leads);
  }

  private static Map<String, TreeSet<String>> ends(List<Wire> wires) {
    Map<String, TreeSet<String>> ends = new TreeMap<>();
    for (Wire wire : wires) {
      ends.put(wire.lead().title(), new TreeSet<>(List.of(wire.from().id(), wire.to().id())));
    }
    return ends;
  }

  private static TreeSet<String> ends(Move move) {
    return new TreeSet<>(List.of(move.from().id(), move.to().id()));
  }

  /** Each terminal holds one lead at most. */
  private static List<Wire> wiring(Random random) {
    List<Terminal> free = new ArrayList<>();
    for (int i = 0; i < TERMINALS; i++) {
      Word name = new Word("t" + i, null);
      free.add(new Terminal(TerminalKind.JACK, "rf", "Analyzer", name, "t" + i, 1, null, false));
    }
    List<Wire> wires = new ArrayList<>();
    for (int i = 0; i < LEADS; i++) {
      if (random.nextInt(4) > 0) {
        Lead lead =
            new Lead(LeadKind.LEAD, new Word("l" + i, null), "l" + i, null, null, null, null);
        Terminal from = free.remove(random.nextInt(free.size()));
        wires.add(new Wire(lead, from, free.remove(random.nextInt(free.size())), null));
      }
    }
    return wires;
  }
}
