package passband.evidence;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The items of one stage, where they stand on the sheet. Steps that ask for nothing have none: the
 * maps are by the position of the step in its list.
 *
 * @param made whether an adjustment was made; null for other stages
 * @param moves one for each lead that is moved
 * @param enter the state is entered; null where there is none, likewise {@code leave}
 * @param before of a run's first steps, or of all steps of a section or adjustment
 */
public record StageItems(
    Item.@Nullable Choice made,
    List<Item> moves,
    @Nullable Item enter,
    Map<Integer, Item> before,
    List<PointItems> points,
    @Nullable Item leave,
    Map<Integer, Item> after) {

  /**
   * The items of one point.
   *
   * @param steps by the position of the step; they stand below the line's boxes
   * @param measured what is read, then what is derived
   */
  public record PointItems(Map<Integer, Item> steps, List<Item.Measured> measured) {
    Stream<Item> items() {
      return Stream.concat(measured.stream(), steps.values().stream());
    }
  }

  /** All of them, in the order of the sheet. */
  public Stream<Item> items() {
    return Stream.of(
            Stream.ofNullable((Item) made),
            moves.stream(),
            Stream.ofNullable(enter),
            before.values().stream(),
            points.stream().flatMap(PointItems::items),
            Stream.ofNullable(leave),
            after.values().stream())
        .flatMap(s -> s);
  }
}
