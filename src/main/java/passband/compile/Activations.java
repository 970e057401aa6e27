package passband.compile;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.model.Device;
import passband.model.Device.Outlet;
import passband.model.Instruments;
import passband.model.Named;
import passband.model.Terminal;
import passband.plan.Act;
import passband.plan.Contacts;
import passband.plan.Point;
import passband.plan.Setup;
import passband.plan.Slot;
import passband.resolve.Names;
import passband.resolve.Scope;
import passband.syntax.Tree;
import passband.syntax.Word;

/** How a mode is activated in a setup: by which of its contacts, with which key or by hand. */
final class Activations {
  private final Device device;
  private final Instruments instruments;
  private final Names names;
  private final Diagnostics diagnostics;

  Activations(Device device, Instruments instruments, Names names, Diagnostics diagnostics) {
    this.device = device;
    this.instruments = instruments;
    this.names = names;
    this.diagnostics = diagnostics;
  }

  /** By the contact that the row names, else by the first of the mode's that can be closed. */
  Act.Activate by(
      RowSpec spec, @Nullable Outlet outlet, @Nullable Terminal wanted, @Nullable Setup setup) {
    if (spec.mode() == null || (spec.activation() != null && wanted == null)) {
      return Act.Activate.UNKNOWN;
    }
    if (wanted != null) {
      Contacts.Closed closed = Contacts.closing(instruments, setup, wanted);
      return activate(closed == null ? new Contacts.Closed(wanted, null, null) : closed);
    }
    List<Contacts.Closed> closed = Contacts.closed(device, instruments, setup, spec.mode(), outlet);
    return closed.isEmpty() ? Act.Activate.UNKNOWN : activate(closed.get(0));
  }

  private Act.Activate activate(Contacts.Closed closed) {
    Terminal key = closed.key();
    String instrument =
        key == null ? null : Owners.of(instruments.in(key.owner()), instruments).label();
    return new Act.Activate(closed.contact(), key, instrument, closed.accessory(), false);
  }

  /** What a row says of its activation; null where it says nothing. */
  Point.@Nullable Activation named(RowSpec spec, @Nullable Outlet outlet) {
    return spec.activation() == null
        ? null
        : new Point.Activation(spec.activation(), named(spec.activation(), outlet));
  }

  /** The contact that a cell names; null, with the fault said, where there is none. */
  @Nullable Terminal named(Tree.Ref ref, @Nullable Outlet on) {
    List<Word> parts = ref.parts();
    Word name = parts.get(parts.size() - 1);
    Word owner = parts.size() == 1 ? null : parts.get(parts.size() - 2);
    Outlet outlet = Contacts.outlet(device, on, ref);
    if (outlet == null) {
      Word unknown = owner == null ? name : owner;
      Scope.unknown(diagnostics, unknown, "outlet", Named.names(device.outlets()));
      return null;
    }
    Terminal contact = Contacts.named(device, on, ref);
    if (contact == null) {
      List<Word> declared = outlet.contacts().stream().map(Terminal::name).toList();
      String where = " on the outlet '" + outlet.name().text() + "'";
      Scope.unknownAmong(diagnostics, name, "contact", where, declared);
      return null;
    }
    if (owner != null) {
      names.use(owner, outlet.name());
    }
    names.use(name, contact.name());
    return contact;
  }

  /** As the sheet prints it: with its outlet where that is another than the point's. */
  static String printed(Terminal contact, @Nullable Outlet on) {
    return on != null && contact.owner().equals(on.name().text())
        ? contact.title()
        : contact.ownerTitle() + ", " + contact.title();
  }

  /** What is let go of to stop the output; nothing where none knows. */
  static Map<String, Placeholders.Value> held(Act.Activate act) {
    Terminal pressed = act.key() == null ? act.contact() : act.key();
    return pressed == null
        ? Map.of()
        : Map.of(Placeholders.HELD, Placeholders.Value.given(Slot.HELD, pressed.title()));
  }

  /** A point's values with the contact and the key. */
  static Map<String, Placeholders.Value> values(
      Map<String, Placeholders.Value> point, Act.Activate act) {
    Map<String, Placeholders.Value> values = new LinkedHashMap<>(point);
    if (act.contact() != null) {
      values.put("contact", Placeholders.Value.given(Slot.CONTACT, act.contact().title()));
    }
    if (act.key() != null) {
      values.put("key", Placeholders.Value.given(Slot.KEY, act.key().title()));
    }
    values.putAll(held(act));
    return values;
  }
}
