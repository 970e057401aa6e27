package passband.edit;

import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.model.Termination;
import passband.parse.CursorContext;
import passband.quantity.Distribution;
import passband.syntax.TerminalKind;
import passband.syntax.Tree;

/** What may be written on a line of a device, an instrument or a set of leads. */
final class ProfileCompletions {
  /** Takes a proposal: what to write, its kind and a few words. */
  interface Taker {
    void take(String label, String kind, String detail);
  }

  private final CursorContext place;
  private final List<Tree.Outlet> outlets;
  private final Collection<Tree.Analyzer> analyzers;
  private final Taker found;

  ProfileCompletions(
      CursorContext place,
      Tree.@Nullable Device device,
      Collection<Tree.Analyzer> analyzers,
      Taker found) {
    this.place = place;
    this.outlets = device == null ? List.of() : device.outlets();
    this.analyzers = analyzers;
    this.found = found;
  }

  /** What may come after the last complete word of a line. */
  void inLine(String lead, String last) {
    boolean first = place.before().size() == 1;
    switch (place.block()) {
      case "outlet" -> {
        if (lead.equals("contact")) {
          floating(last);
        } else if (lead.equals("join")) {
          poles();
        }
      }
      case "mode" -> mode(lead, last, first);
      case "analyzer" -> {
        unknown(lead.equals("settle") && first);
        measured(lead, last, first);
      }
      case "load" -> {
        unknown(!lead.equals("values") && !lead.equals("join") && first);
        if (lead.equals("values")) {
          terminations(found);
        } else if (lead.equals("join")) {
          analyzers.forEach(
              one -> one.terminals().forEach(jack -> terminal(jack, jack.name().text())));
        }
        distributions(lead, last);
      }
      case "measure", "range" -> {
        unknown(lead.equals("error") && first);
        distributions(lead, last);
      }
      case "leads" -> unknown(last.equals("rated"));
      default -> {}
    }
  }

  private void mode(String lead, String last, boolean first) {
    switch (lead) {
      case "setting", "output", "allow" -> {}
      case "load" -> {
        terminations(found);
        unknown(first);
      }
      case "activate" -> {
        contacts(last);
        unknown(first);
      }
      default -> unknown(first);
    }
  }

  /** What may stand in the place of a rating. */
  private void unknown(boolean here) {
    if (here) {
      keyword("unknown because", "a rating that nobody states; the reason is printed");
    }
  }

  /** How an error may be distributed. */
  private void distributions(String lead, String last) {
    if (lead.equals("error") && last.equals("as")) {
      for (Distribution.Shape shape : Distribution.Shape.values()) {
        boolean normal = shape == Distribution.Shape.NORMAL;
        keyword(shape.word() + (normal ? " coverage 2" : ""), "how the error is distributed");
      }
    } else if (lead.equals("error") && !last.equals("error") && !last.equals("because")) {
      keyword("degrees-of-freedom", "how well the error is known; infinitely many unless said");
    }
  }

  /** What may stand in the place of a load. */
  static void terminations(Taker found) {
    for (Termination one : Termination.values()) {
      found.take(one.word(), "keyword", "in the place of a load");
    }
  }

  private void keyword(String word, String detail) {
    found.take(word, "keyword", detail);
  }

  private void terminal(Tree.Terminal one, String label) {
    String kind = one.kind().word();
    found.take(label, kind, one.title() == null ? kind : kind + " — " + one.title().text());
  }

  private void contacts(String last) {
    if (last.equals("activate")) {
      keyword("by", "a contact");
      return;
    }
    for (Tree.Outlet outlet : outlets) {
      for (Tree.Terminal one : outlet.terminals()) {
        if (one.kind() == TerminalKind.CONTACT) {
          terminal(one, one.name().text());
        }
      }
    }
  }

  /** Contacts with their outlets. */
  static void contacts(Tree.@Nullable Device device, Taker found) {
    for (Tree.Outlet outlet : device == null ? List.<Tree.Outlet>of() : device.outlets()) {
      for (Tree.Terminal one : outlet.terminals()) {
        if (one.kind() == TerminalKind.CONTACT) {
          String title = one.title() == null ? "" : " — " + one.title().text();
          String name = one.name().text();
          found.take(name, "contact", "of the point's outlet" + title);
          found.take(outlet.name().text() + "." + name, "contact", "contact" + title);
        }
      }
    }
  }

  /** The poles of the outlet that a line stands in. */
  private void poles() {
    for (Tree.Outlet outlet : outlets) {
      if (outlet.name().text().equals(place.nameOf("outlet"))) {
        for (Tree.Terminal one : outlet.terminals()) {
          if (one.kind() == TerminalKind.POLE) {
            terminal(one, one.name().text());
          }
        }
      }
    }
  }

  /** The pole that a contact floats on: of its own outlet first, and of the others. */
  private void floating(String last) {
    if (!last.equals("on")) {
      keyword("on", "the pole that the contact floats on");
      keyword("by hand", "a button that needs no lead");
      return;
    }
    String own = place.nameOf("outlet");
    for (Tree.Outlet outlet : outlets) {
      boolean here = outlet.name().text().equals(own);
      for (Tree.Terminal one : outlet.terminals()) {
        if (one.kind() == TerminalKind.POLE) {
          terminal(one, (here ? "" : outlet.name().text() + ".") + one.name().text());
        }
      }
    }
  }

  /** Between which jacks a quantity is measured, and through what resistance. */
  private void measured(String lead, String last, boolean first) {
    if (!lead.equals("measure") || first) {
      return;
    }
    if (last.equals("from") || last.equals("to")) {
      analyzers.forEach(one -> one.terminals().forEach(jack -> terminal(jack, jack.name().text())));
    } else {
      List.of("from", "to", "through").forEach(word -> keyword(word, "the meter's own path"));
    }
  }
}
