package passband.judge;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.quantity.Rational;
import passband.quantity.Wave;

/**
 * Which readings show the same wave, one its peak and the other its RMS value: those of one point
 * in one phase, whether or not anything is calculated from them.
 */
public final class SameWave {
  private final Map<String, List<Item.Reading>> others = new HashMap<>();

  /** Of a list of items. */
  public SameWave(ItemList list) {
    Map<List<Object>, List<Item.Reading>> points = new HashMap<>();
    for (Item item : list.items()) {
      if (item instanceof Item.Reading reading && ofAWave(reading)) {
        List<Object> point = List.of(reading.where(), String.valueOf(reading.head().phase()));
        points.computeIfAbsent(point, x -> new ArrayList<>()).add(reading);
      }
    }
    points.values().forEach(this::add);
  }

  private void add(List<Item.Reading> point) {
    for (Item.Reading one : point) {
      others.put(one.id(), point.stream().filter(o -> isPeak(o) != isPeak(one)).toList());
    }
  }

  /** For a peak the RMS values of the same wave, for an RMS value the peaks. */
  public List<Item.Reading> others(Item.Reading reading) {
    return others.getOrDefault(reading.id(), List.of());
  }

  /**
   * Which peak is below which RMS value, in words, of a reading and what is written of the others.
   *
   * @param values what is written of a reading; null where that cannot be told
   */
  List<String> impossible(
      DerivedValue.Part reading, Function<Item.Reading, @Nullable Rational> values) {
    List<String> impossible = new ArrayList<>();
    for (Item.Reading other : others(reading.item())) {
      Rational value = values.apply(other);
      String reversed =
          value == null ? null : PeakAndRms.reversed(reading, new DerivedValue.Part(other, value));
      if (reversed != null) {
        impossible.add(reversed);
      }
    }
    return impossible;
  }

  private static boolean ofAWave(Item.Reading reading) {
    return isPeak(reading) || Wave.ofRms(reading.scale().quantity()) != null;
  }

  private static boolean isPeak(Item.Reading reading) {
    return Wave.ofPeak(reading.scale().quantity()) != null;
  }
}
