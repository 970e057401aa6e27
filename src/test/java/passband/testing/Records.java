package passband.testing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.judge.Readings;

/**
 * A complete and good record of a list of items, of which single rows can be changed: readings in
 * the middle of their limits, outcomes that pass, every tick, every blank.
 */
public final class Records {
  /** The heading of {@code readings.csv}. */
  public static final String HEAD = "point,reading,unit,phase,attempt,kind,digest\n";

  /** Of a list that no procedure was compiled to. */
  public static final ItemList.Source SOURCE =
      new ItemList.Source(
          "p",
          "P",
          "A",
          "2026-01-01",
          "0".repeat(64),
          "d",
          List.of(new ItemList.Instrument("analyzer", "a")),
          "en",
          true);

  private final ItemList list;
  private final Map<String, List<String>> rows = new LinkedHashMap<>();

  private Records(ItemList list, boolean adjusted) {
    this.list = list;
    int rms = rms(list);
    for (Item item : list.items()) {
      boolean chosen = item.head().when().stream().allMatch(c -> c.is().contains(good(c.item())));
      if (chosen && (item.head().applies().isEmpty() || adjusted)) {
        boolean decides = conditions(list).contains(item.id());
        rows.put(
            item.id(),
            List.of(
                decides ? (adjusted ? "yes" : "no") + ",,,1,choice" : item.accept(new Good(rms))));
      }
    }
    for (Item item : list.items()) {
      if (item instanceof Item.Derived load && isLoad(load) && rows.containsKey(load.id())) {
        voltageAtTheLoad(load);
      }
    }
  }

  /** Whether it is worked out from a voltage and a current at a load of so many ohms. */
  private static boolean isLoad(Item.Derived derived) {
    return derived.calculation().parts().keySet().equals(Set.of("voltage", "current"))
        && "Ohm".equals(derived.where().loadUnit());
  }

  /** What the current that is written is through the load. */
  private void voltageAtTheLoad(Item.Derived load) {
    String[] current = rows.get(load.calculation().parts().get("current")).get(0).split(",");
    BigDecimal amperes = new BigDecimal(current[0]).movePointLeft(current[1].equals("mA") ? 3 : 0);
    String voltage = load.calculation().parts().get("voltage");
    for (Item item : list.items()) {
      if (item.id().equals(voltage) && item instanceof Item.Reading reading) {
        BigDecimal volts =
            amperes
                .multiply(load.where().load())
                .setScale(reading.scale().decimals(), RoundingMode.HALF_EVEN);
        with(voltage, reading(volts.toPlainString(), reading.scale().unit()));
      }
    }
  }

  /** A crest factor of 300 over this is inside its limits. */
  private static int rms(ItemList list) {
    for (Item item : list.items()) {
      if (item instanceof Item.Derived d
          && d.calculation().parts().containsKey("voltage")
          && !isLoad(d)
          && d.limits().lower() != null) {
        return d.limits().upper() == null
            ? 150
            : new BigDecimal(600)
                .divide(d.limits().lower().add(d.limits().upper()), 0, RoundingMode.HALF_EVEN)
                .intValueExact();
      }
    }
    return 200;
  }

  /** The outcome that a good record has of a choice. */
  private String good(String choice) {
    return list.items().stream()
        .filter(item -> item.id().equals(choice))
        .map(item -> outcome((Item.Choice) item))
        .findFirst()
        .orElseThrow();
  }

  private static String outcome(Item.Choice choice) {
    return choice.pass() != null ? choice.pass() : choice.options().get(0);
  }

  /** The choices on which it depends whether other items apply. */
  private static Set<String> conditions(ItemList list) {
    return list.items().stream()
        .flatMap(item -> item.head().applies().stream().map(Item.Condition::item))
        .collect(Collectors.toSet());
  }

  /**
   * Of these items.
   *
   * @param adjusted whether adjustments were made, so that all is read again
   */
  public static Records of(ItemList list, boolean adjusted) {
    return new Records(list, adjusted);
  }

  /** The identities of the items that are in it. */
  public List<String> ids() {
    return List.copyOf(rows.keySet());
  }

  /** With these rows, written as {@code reading,unit,phase,attempt,kind}, for an item. */
  public Records with(String id, String... written) {
    rows.put(id, List.of(written));
    return this;
  }

  /** Without an item. */
  public Records without(String id) {
    rows.remove(id);
    return this;
  }

  /** As {@code readings.csv}. */
  public String csv() {
    StringBuilder csv = new StringBuilder(HEAD);
    rows.forEach(
        (id, written) ->
            written.stream()
                .filter(row -> !row.isEmpty())
                .forEach(row -> csv.append(id + "," + row + "," + list.source().digest() + "\n")));
    return csv.toString();
  }

  /** As read by the judge. */
  public Readings readings() {
    try {
      return Readings.parse(csv().getBytes(StandardCharsets.UTF_8));
    } catch (passband.evidence.BadInput e) {
      throw new AssertionError(e);
    }
  }

  /** A row for a reading. */
  public static String reading(String value, String unit) {
    return value + "," + unit + ",,1,reading";
  }

  /** The middle of what is accepted; without limits what is set, where that is of the same kind. */
  public static BigDecimal middle(Item.Measured item) {
    Item.Limits limits = item.limits();
    if (limits == null) {
      boolean set = item.scale().unit().equals(item.where().settingUnit());
      return (set ? item.where().setting() : new BigDecimal(300))
          .setScale(item.scale().decimals(), RoundingMode.HALF_EVEN);
    }
    BigDecimal low = limits.acceptLower() == null ? limits.acceptUpper() : limits.acceptLower();
    BigDecimal high = limits.acceptUpper() == null ? limits.acceptLower() : limits.acceptUpper();
    return low.add(high)
        .divide(BigDecimal.valueOf(2))
        .setScale(item.scale().decimals(), RoundingMode.FLOOR);
  }

  /** A number that a blank accepts. */
  public static String value(Item.Recorded recorded) {
    Item.Accepts accepts = recorded.accepts();
    if (accepts == null) {
      return "80";
    }
    BigDecimal end = accepts.lower() == null ? accepts.upper() : accepts.lower();
    return end.setScale(accepts.decimals()).toPlainString();
  }

  /** What is written for each kind when all is well; empty for a derived value. */
  private record Good(int rms) implements Item.Visitor<String> {
    @Override
    public String reading(Item.Reading reading) {
      BigDecimal value =
          reading.limits() == null && reading.scale().quantity().equals("voltage")
              ? new BigDecimal(rms).setScale(reading.scale().decimals())
              : middle(reading);
      return Records.reading(value.toPlainString(), reading.scale().unit());
    }

    @Override
    public String derived(Item.Derived derived) {
      return "";
    }

    @Override
    public String recorded(Item.Recorded recorded) {
      if (recorded.unit() != null) {
        return value(recorded) + "," + recorded.unit() + ",,1,record";
      }
      String value =
          recorded.id().contains("due")
              ? "2099-01-31"
              : recorded.id().endsWith("date") ? "2026-11-27" : "80";
      return value + ",,,1,record";
    }

    @Override
    public String choice(Item.Choice choice) {
      return outcome(choice) + ",,,1,choice";
    }

    @Override
    public String tick(Item.Tick tick) {
      return "yes,,,1,tick";
    }
  }
}
