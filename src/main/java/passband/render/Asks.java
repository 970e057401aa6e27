package passband.render;

import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.evidence.Item;
import passband.evidence.ItemWords;
import passband.limit.Decision;
import passband.syntax.DecisionKind;
import passband.words.Language;

/** Items as the sheet asks for them. */
final class Asks {
  private final Decision decision;
  private final Language language;

  Asks(Decision decision, Language language) {
    this.decision = decision;
    this.language = language;
  }

  List<Sheet.Ask> all(Collection<Item> items) {
    return items.stream().map(this::of).toList();
  }

  /** Null for null. */
  Sheet.@Nullable Ask optional(@Nullable Item item) {
    return item == null ? null : of(item);
  }

  Sheet.Ask of(Item item) {
    String text = item.head().title();
    if (item instanceof Item.Choice choice) {
      return new Sheet.Ask(item.id(), "choice", text, null, choice.options(), choice.pass(), null);
    }
    return item instanceof Item.Recorded recorded
        ? new Sheet.Ask(
            item.id(), "record", text, unit(recorded), List.of(), null, accepted(recorded))
        : new Sheet.Ask(item.id(), "tick", text, null, List.of(), null, null);
  }

  private static @Nullable String unit(Item.Recorded recorded) {
    return recorded.unit() == null ? null : ItemWords.unit(recorded).strip();
  }

  /** What a recorded number has to be, and that it has no guard band where readings have one. */
  private @Nullable String accepted(Item.Recorded recorded) {
    String limits = new LimitWords(language).of(recorded);
    boolean simple = decision.kind() == DecisionKind.SIMPLE;
    if (limits.isEmpty()) {
      return null;
    }
    return simple ? limits : language.of("limits.no-guard-band", limits);
  }
}
