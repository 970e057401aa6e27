package passband.edit;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.parse.CursorContext;
import passband.quantity.Dimension;
import passband.quantity.QuantityKind;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.syntax.Tree;

/** Of what dimension a number at the cursor is likely to be. */
final class DimensionAtCursor {
  /** Words that say what is meant by the number behind them. */
  private static final Map<String, Dimension> WORDS =
      Map.ofEntries(
          Map.entry("load", Dimension.RESISTANCE),
          Map.entry("values", Dimension.RESISTANCE),
          Map.entry("on-time", Dimension.TIME),
          Map.entry("settle", Dimension.TIME),
          Map.entry("duty", Dimension.TIME),
          Map.entry("for", Dimension.TIME),
          Map.entry("wait", Dimension.TIME),
          Map.entry("rated", Dimension.VOLTAGE));

  private final CursorContext place;
  private final Tree.@Nullable Device device;

  DimensionAtCursor(CursorContext place, Tree.@Nullable Device device) {
    this.place = place;
    this.device = device;
  }

  /** All units that have a name, those of this dimension first. */
  Set<Unit> units() {
    Dimension own = found();
    Set<Unit> units = new LinkedHashSet<>(own == null ? List.of() : Units.of(own));
    units.addAll(Units.all());
    units.removeIf(unit -> unit.symbol().isEmpty());
    return units;
  }

  /** Null where nothing tells. */
  private @Nullable Dimension found() {
    Dimension line = nearest(place.before());
    List<List<String>> blocks = place.blocks();
    for (int i = blocks.size() - 1; line == null && i >= 0; i--) {
      List<String> head = blocks.get(i);
      line = head.isEmpty() || !head.get(0).equals("measure") ? null : nearest(head);
    }
    return line;
  }

  private @Nullable Dimension nearest(List<String> words) {
    for (int i = words.size() - 1; i >= 0; i--) {
      String word = words.get(i);
      QuantityKind kind = QuantityKind.find(word);
      if (kind != null) {
        return kind.dimension();
      } else if (WORDS.containsKey(word)) {
        return WORDS.get(word);
      } else if (word.equals("setting")) {
        return setting();
      } else if (word.equals("|") && i < words.size() - 1) {
        return null;
      }
    }
    return null;
  }

  /** What the device's modes are set in; null where they differ or none is known. */
  private @Nullable Dimension setting() {
    Dimension common = null;
    for (Tree.Mode mode : device == null ? List.<Tree.Mode>of() : device.modes()) {
      QuantityKind kind =
          mode.settingQuantity() == null ? null : QuantityKind.find(mode.settingQuantity().text());
      if (kind == null || common != null && !common.equals(kind.dimension())) {
        return null;
      }
      common = kind.dimension();
    }
    return common;
  }
}
