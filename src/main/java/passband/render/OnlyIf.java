package passband.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.plan.Plan;
import passband.plan.Stage;
import passband.words.Language;

/** The sentence under a heading that says when its part is done, and what to skip otherwise. */
final class OnlyIf {
  private final Plan plan;
  private final Language language;

  OnlyIf(Plan plan) {
    this.plan = plan;
    this.language = plan.language();
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
      sentences.add(language.of("only.adjusted", either(titles), skipped(first, last)));
    }
    Stage.Option option = condition.option();
    if (option != null) {
      String question =
          Objects.requireNonNull(plan.choice(option.choice()), option.choice()).text(language);
      List<String> answers = option.is().stream().map(this::quoted).toList();
      sentences.add(
          language.of("only.answer", quoted(question), either(answers), skipped(first, last)));
    }
    return sentences.isEmpty() ? null : String.join(" ", sentences);
  }

  private String either(List<String> texts) {
    String all = texts.get(0);
    for (String text : texts.subList(1, texts.size())) {
      all = language.of("list.or", all, text);
    }
    return all;
  }

  private String skipped(int first, int last) {
    if (first == 0 || last < first) {
      return language.of("skip.part");
    }
    return first == last ? language.of("skip.line", first) : language.of("skip.lines", first, last);
  }

  private String quoted(String text) {
    return language.of("quoted", text);
  }
}
