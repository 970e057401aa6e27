package passband.evidence;

import java.util.List;
import java.util.stream.Stream;
import passband.plan.Plan;

/**
 * The items of a plan, where they stand on the sheet.
 *
 * @param identity who, when and with what
 * @param leads one for each lead of the plan's {@code usedLeads}
 * @param stages one for each stage of the plan
 * @param result what the technician says of the whole
 */
public record Evidence(
    ItemList.Source source,
    ItemList.Decision decision,
    List<String> phases,
    List<Item.Recorded> identity,
    List<Item.Tick> leads,
    List<StageItems> stages,
    Item.Choice result) {

  /** The items of a plan. */
  public static Evidence of(Plan plan) {
    return new EvidenceMaker(plan).evidence();
  }

  /** All items, in the order of the sheet. */
  public ItemList list() {
    List<Item> items =
        Stream.of(
                identity.stream(),
                leads.stream(),
                stages.stream().flatMap(StageItems::items),
                Stream.of(result))
            .<Item>flatMap(s -> s)
            .toList();
    return new ItemList(source, decision, phases, items);
  }
}
