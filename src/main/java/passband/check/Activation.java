package passband.check;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.model.Device;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.Named;
import passband.model.Terminal;
import passband.plan.Contacts;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.plan.Wire;
import passband.resolve.Scope;
import passband.syntax.TerminalKind;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * {@code activation-open}, an error: none of the contacts that activate a mode is joined to a key
 * of the analyzer in the setup or closed by hand, or the one that the row names is not; {@code
 * activation-ambiguous}, an error: several are, and the row names none; and {@code unknown-name}
 * for a contact that is not there, or does not activate the mode.
 */
final class Activation implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      Set<String> looked = new HashSet<>();
      Set<String> open = new HashSet<>();
      run.points().forEach(point -> together(plan, run, point, diagnostics));
      for (Point point : run.delivered()) {
        Mode mode = point.mode();
        Outlet outlet = point.outlet();
        Point.Activation named = point.activation();
        String kind =
            (mode == null ? "" : mode.name().text())
                + "/"
                + (named == null ? "" : named.written().text());
        if (mode != null
            && outlet != null
            && run.setup() != null
            && run.setup().whole()
            && (named != null || looked.add(kind))
            && mode.isOn(outlet)) {
          look(plan, run.setup(), mode, point, outlet, open, diagnostics);
        } else if (mode == null && named != null) {
          diagnostics.say(
              Code.WRONG_KIND,
              named.written().span(),
              "a contact is named, but without a 'mode' column nothing is activated");
        }
      }
    }
  }

  /** What outlets deliver at the same time is activated by a contact each. */
  private static void together(Plan plan, Stage.Run run, Point point, Diagnostics diagnostics) {
    List<Point> all = point.delivered();
    for (int i = 1; i < all.size(); i++) {
      for (Point before : all.subList(0, i)) {
        Terminal one = contact(plan, run, before);
        Terminal other = contact(plan, run, all.get(i));
        if (one != null && other != null && one.same(other)) {
          diagnostics
              .say(
                  Code.ACTIVATION_AMBIGUOUS,
                  all.get(i).span(),
                  "one contact, %s, is to activate two modes at the same time",
                  other.id())
              .note(run.test().span(), "in the test '%s'", run.test().text())
              .hint("name two contacts in the columns 'activation' and 'OUTLET.activation'");
        }
      }
    }
  }

  /** The contact that a row names, or the only one that can be closed; null where none is. */
  private static @Nullable Terminal contact(Plan plan, Stage.Run run, Point point) {
    if (point.activation() != null || point.mode() == null) {
      return point.activation() == null ? null : point.activation().contact();
    }
    List<Contacts.Closed> closed =
        Contacts.closed(
            plan.device(), plan.instruments(), run.setup(), point.mode(), point.outlet());
    return closed.size() == 1 ? closed.get(0).contact() : null;
  }

  private static void look(
      Plan plan,
      Setup setup,
      Mode mode,
      Point point,
      Outlet outlet,
      Set<String> open,
      Diagnostics diagnostics) {
    List<Terminal> contacts = new ArrayList<>();
    for (Tree.Ref ref : mode.activateBy()) {
      Terminal contact = contact(plan.device(), outlet, ref, diagnostics);
      if (contact == null) {
        return;
      }
      contacts.add(contact);
    }
    if (point.activation() != null) {
      named(plan, setup, mode, point.activation(), contacts, open, diagnostics);
    } else if (!contacts.isEmpty()) {
      any(plan, setup, mode, point, outlet, contacts, diagnostics);
    }
  }

  /**
   * The contact that the row names activates the mode, and something closes it.
   *
   * @param open the contacts that have been said to be open, each once a run
   */
  private static void named(
      Plan plan,
      Setup setup,
      Mode mode,
      Point.Activation named,
      List<Terminal> contacts,
      Set<String> open,
      Diagnostics diagnostics) {
    Terminal contact = named.contact();
    if (contact == null) {
      return; // it is not there, which has been said
    }
    if (!contacts.isEmpty() && contacts.stream().noneMatch(contact::same)) {
      List<Word> parts = named.written().parts();
      Scope.unknown(
          diagnostics,
          parts.get(parts.size() - 1),
          "contact",
          " among those that activate '" + mode.name().text() + "'",
          contacts.stream().map(c -> c.name().text()).toList());
    } else if (Contacts.closing(plan.instruments(), setup, contact) == null
        && open.add(contact.id())) {
      diagnostics
          .say(
              Code.ACTIVATION_OPEN,
              named.written().span(),
              "nothing in the setup '%s' closes %s: no key or accessory is connected to it",
              setup.name().text(),
              contact.id())
          .note(setup.name().span(), "the setup is here")
          .hint(hint(plan));
    }
  }

  private static String hint(Plan plan) {
    for (Terminal terminal : plan.instruments().terminals()) {
      if (terminal.kind() == TerminalKind.KEY) {
        return "connect a key lead from the contact to a key of the analyzer";
      }
    }
    return "connect an accessory, such as the pedal, at the contact: no analyzer here has keys";
  }

  private static void any(
      Plan plan,
      Setup setup,
      Mode mode,
      Point point,
      Outlet outlet,
      List<Terminal> contacts,
      Diagnostics diagnostics) {
    List<Contacts.Closed> closed =
        Contacts.closed(plan.device(), plan.instruments(), setup, mode, outlet);
    if (closed.isEmpty()) {
      String names = contacts.stream().map(Terminal::id).collect(Collectors.joining(" or "));
      DiagnosticBuilder said =
          diagnostics
              .say(
                  Code.ACTIVATION_OPEN,
                  setup.name().span(),
                  "nothing in this setup activates '%s': no key or accessory is connected to %s",
                  mode.name().text(),
                  names)
              .note(mode.activateBy().get(0).span(), "this contact activates the mode")
              .note(point.span(), "this point activates it");
      for (Wire wire : setup.wires()) {
        Terminal far = contacts.stream().anyMatch(wire.from()::same) ? wire.to() : wire.from();
        if (far.kind() == TerminalKind.JACK && contacts.stream().anyMatch(wire::touches)) {
          said.note(far.name().span(), "a lead goes from it to this, which is a jack");
        }
      }
      said.hint(hint(plan));
    } else if (closed.size() > 1) {
      sayAmbiguous(closed, setup, mode, point, diagnostics);
    }
  }

  /** Which contact activates the mode has to be one. */
  private static void sayAmbiguous(
      List<Contacts.Closed> closed, Setup setup, Mode mode, Point point, Diagnostics diagnostics) {
    diagnostics
        .say(
            Code.ACTIVATION_AMBIGUOUS,
            point.span(),
            "'%s' is activated by any of %s in this setup",
            mode.name().text(),
            closed.stream().map(one -> one.contact().id()).collect(Collectors.joining(", ")))
        .note(setup.name().span(), "all of them can be closed here")
        .hint("name one of them in a column 'activation', or connect no more than one");
  }

  private static @Nullable Terminal contact(
      Device device, Outlet on, Tree.Ref ref, Diagnostics diagnostics) {
    List<Word> parts = ref.parts();
    Outlet outlet = Contacts.outlet(device, on, ref);
    Word name = parts.get(parts.size() - 1);
    if (outlet == null) {
      Scope.unknown(
          diagnostics, parts.get(parts.size() - 2), "outlet", Named.names(device.outlets()));
      return null;
    }
    Terminal contact = Contacts.named(device, on, ref);
    if (contact == null) {
      DiagnosticBuilder said =
          Scope.unknown(
              diagnostics,
              name,
              "contact",
              " on the outlet '" + outlet.name().text() + "'",
              Named.names(outlet.contacts()));
      Terminal other = outlet.terminal(name.text());
      if (other != null) {
        said.note(other.name().span(), "it is a %s here", other.kind().word());
      }
    }
    return contact;
  }
}
