package passband.check;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Device;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.Instruments;
import passband.model.Named;
import passband.model.Terminal;
import passband.plan.Nets;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.resolve.Scope;
import passband.syntax.TerminalKind;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * {@code activation-open}, an error: none of the contacts that activate a mode is joined to a key
 * of the analyzer in the setup; {@code activation-ambiguous}, an error: several are; and {@code
 * unknown-name} for a contact that is not there.
 */
final class Activation implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      Set<String> looked = new HashSet<>();
      for (Point point : run.points()) {
        Mode mode = point.mode();
        Outlet outlet = point.outlet();
        if (mode != null
            && outlet != null
            && run.setup() != null
            && looked.add(mode.name().text())
            && !mode.activateBy().isEmpty()
            && mode.isOn(outlet)) {
          look(plan, run.setup(), mode, point, outlet, diagnostics);
        }
      }
    }
  }

  private static void look(
      Plan plan, Setup setup, Mode mode, Point point, Outlet outlet, Diagnostics diagnostics) {
    List<Terminal> contacts = new ArrayList<>();
    for (Tree.Ref ref : mode.activateBy()) {
      Terminal contact = contact(plan.device(), outlet, ref, diagnostics);
      if (contact == null) {
        return;
      }
      contacts.add(contact);
    }
    Nets nets = new Nets(setup.wires());
    List<String> closed = closed(plan.instruments(), nets, contacts);
    if (closed.isEmpty()) {
      String names = contacts.stream().map(Terminal::id).collect(Collectors.joining(" or "));
      diagnostics
          .say(
              Code.ACTIVATION_OPEN,
              setup.name().span(),
              "nothing in this setup activates '%s': no key is connected to %s",
              mode.name().text(),
              names)
          .note(mode.activateBy().get(0).span(), "this contact activates the mode")
          .hint("connect a key lead from the contact to a key of the analyzer");
    }
    sayAmbiguous(closed, setup, mode, point, diagnostics);
  }

  /** Which contact activates the mode has to be one. */
  private static void sayAmbiguous(
      List<String> closed, Setup setup, Mode mode, Point point, Diagnostics diagnostics) {
    if (closed.size() > 1) {
      diagnostics
          .say(
              Code.ACTIVATION_AMBIGUOUS,
              point.span(),
              "'%s' is activated by any of %s in this setup",
              mode.name().text(),
              String.join(", ", closed))
          .note(setup.name().span(), "keys are connected to all of them here")
          .hint("leave one of them connected, with a setup of its own for each contact");
    }
  }

  /** The contacts that are joined to a key. */
  private static List<String> closed(Instruments instruments, Nets nets, List<Terminal> contacts) {
    List<String> closed = new ArrayList<>();
    for (Terminal contact : contacts) {
      for (Terminal terminal : instruments.terminals()) {
        if (terminal.kind() == TerminalKind.KEY && nets.joined(contact, terminal)) {
          closed.add(contact.id());
          break;
        }
      }
    }
    return closed;
  }

  private static @Nullable Terminal contact(
      Device device, Outlet on, Tree.Ref ref, Diagnostics diagnostics) {
    List<Word> parts = ref.parts();
    Outlet outlet = parts.size() == 1 ? on : device.outlet(parts.get(parts.size() - 2).text());
    Word name = parts.get(parts.size() - 1);
    if (outlet == null) {
      Scope.unknown(
          diagnostics, parts.get(parts.size() - 2), "outlet", Named.names(device.outlets()));
      return null;
    }
    Terminal contact = outlet.terminal(name.text());
    if (contact == null || contact.kind() != TerminalKind.CONTACT) {
      Scope.unknown(
          diagnostics,
          name,
          "contact",
          " on the outlet '" + outlet.name().text() + "'",
          outlet.terminals().stream()
              .filter(t -> t.kind() == TerminalKind.CONTACT)
              .map(t -> t.name().text())
              .toList());
      return null;
    }
    return contact;
  }
}
