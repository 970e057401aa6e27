package passband.compile;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.Terminal;
import passband.plan.Act;
import passband.plan.Setup;
import passband.plan.Slot;
import passband.plan.Wire;
import passband.syntax.Tree;

/** How a mode is activated in a setup: by which of its contacts, with which key. */
final class Activations {
  private Activations() {}

  /** The first of the mode's contacts that the setup connects to the analyzer. */
  static Act.Activate by(Mode mode, @Nullable Outlet outlet, @Nullable Setup setup) {
    for (Tree.Ref ref : mode.activateBy()) {
      String id = contactId(ref, outlet);
      for (Wire wire : setup == null ? List.<Wire>of() : setup.wires()) {
        boolean forth = wire.from().id().equals(id);
        if (forth || wire.to().id().equals(id)) {
          Terminal contact = forth ? wire.from() : wire.to();
          Terminal far = forth ? wire.to() : wire.from();
          if (far.onAnalyzer()) {
            return new Act.Activate(contact, far);
          }
        }
      }
    }
    return new Act.Activate(null, null);
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
    return values;
  }

  /** The identity of the contact that an {@code activate by} names on an outlet. */
  private static String contactId(Tree.Ref ref, @Nullable Outlet outlet) {
    int parts = ref.parts().size();
    String name = ref.parts().get(parts - 1).text();
    return parts > 1
        ? ref.parts().get(parts - 2).text() + "." + name
        : (outlet == null ? "" : outlet.name().text()) + "." + name;
  }
}
