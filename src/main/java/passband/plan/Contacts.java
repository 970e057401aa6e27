package passband.plan;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.model.Device;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.Instruments;
import passband.model.Lead;
import passband.model.Terminal;
import passband.syntax.TerminalKind;
import passband.syntax.Tree;

/** Which contacts a setup lets somebody close, and with what. */
public final class Contacts {
  private Contacts() {}

  /**
   * A contact that can be closed.
   *
   * @param key of the instrument that closes it; null where a hand does
   * @param accessory whose button or pedal the hand uses; null for the generator's own button
   */
  public record Closed(Terminal contact, @Nullable Terminal key, @Nullable Lead accessory) {}

  /**
   * The contact that a name means: of the outlet before its dot, else of the outlet itself; null
   * when there is none.
   *
   * @param on null for a point without an outlet
   */
  public static @Nullable Terminal named(Device device, @Nullable Outlet on, Tree.Ref ref) {
    Outlet outlet = outlet(device, on, ref);
    String name = ref.parts().get(ref.parts().size() - 1).text();
    Terminal found = outlet == null ? null : outlet.terminal(name);
    return found == null || found.kind() != TerminalKind.CONTACT ? null : found;
  }

  /** The outlet before the name's dot, else the outlet itself; null when there is none. */
  public static @Nullable Outlet outlet(Device device, @Nullable Outlet on, Tree.Ref ref) {
    int parts = ref.parts().size();
    return parts == 1 ? on : device.outlet(ref.parts().get(parts - 2).text());
  }

  /** Those of a mode's contacts that can be closed on an outlet, in the order of the profile. */
  public static List<Closed> closed(
      Device device,
      Instruments instruments,
      @Nullable Setup setup,
      Mode mode,
      @Nullable Outlet outlet) {
    List<Closed> closed = new ArrayList<>();
    for (Tree.Ref ref : mode.activateBy()) {
      Terminal contact = named(device, outlet, ref);
      Closed one = contact == null ? null : closing(instruments, setup, contact);
      if (one != null) {
        closed.add(one);
      }
    }
    return closed;
  }

  /**
   * How a contact is closed: by the key that leads join it to, else by hand with an accessory that
   * touches it or where it is a button; null when nothing closes it.
   *
   * @param setup null for a test without one
   */
  public static @Nullable Closed closing(
      Instruments instruments, @Nullable Setup setup, Terminal contact) {
    Nets nets = setup == null ? Nets.NONE : setup.nets();
    for (Terminal terminal : instruments.terminals()) {
      if (terminal.kind() == TerminalKind.KEY && nets.joined(contact, terminal)) {
        return new Closed(contact, terminal, null);
      }
    }
    for (Wire wire : setup == null ? List.<Wire>of() : setup.wires()) {
      if (wire.lead().accessory() && wire.touches(contact)) {
        return new Closed(contact, null, wire.lead());
      }
    }
    return contact.byHand() ? new Closed(contact, null, null) : null;
  }
}
