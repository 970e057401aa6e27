package passband.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.plan.Plan;
import passband.plan.Stage;

/** The sentence under a heading that says when its part is done, and what to skip otherwise. */
final class OnlyIf {
  private final Plan plan;

  OnlyIf(Plan plan) {
    this.plan = plan;
  }

  /**
   * Null for a part that is always done.
   *
   * @param first the number of its first line; after {@code last} where it has none
   */
  @Nullable String of(Stage.Condition condition, int first, int last) {
    List<String> sentences = new ArrayList<>();
    List<String> titles = new ArrayList<>();
    for (Stage stage : plan.stages()) {
      if (stage instanceof Stage.Adjust adjust
          && condition.adjusted().contains(adjust.name().text())) {
        titles.add(quoted(adjust.title()));
      }
    }
    if (!titles.isEmpty()) {
      sentences.add(
          "Only if "
              + String.join(" or ", titles)
              + " was made; otherwise skip "
              + skipped(first, last)
              + ".");
    }
    Stage.Option option = condition.option();
    if (option != null) {
      String question =
          Objects.requireNonNull(plan.choice(option.choice()), option.choice()).text();
      List<String> answers = option.is().stream().map(OnlyIf::quoted).toList();
      sentences.add(
          "Only if the answer to "
              + quoted(question)
              + " is "
              + String.join(" or ", answers)
              + "; otherwise skip "
              + skipped(first, last)
              + ".");
    }
    return sentences.isEmpty() ? null : String.join(" ", sentences);
  }

  private static String skipped(int first, int last) {
    if (first == 0 || last < first) {
      return "this part";
    }
    return first == last ? "line " + first : "lines " + first + " to " + last;
  }

  private static String quoted(String text) {
    return "\u201c" + text + "\u201d";
  }
}
