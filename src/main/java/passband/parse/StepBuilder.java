package passband.parse;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.parse.antlr.PassbandParser.*;
import passband.syntax.Step;
import passband.syntax.Word;

/** From the contexts of steps to steps. */
final class StepBuilder {
  private final Terminals leaves;
  private final ItemBuilder build;
  private final Limits limits;

  StepBuilder(Terminals leaves, ItemBuilder build) {
    this.leaves = leaves;
    this.limits = new Limits(leaves);
    this.build = build;
  }

  List<Step> steps(List<StepContext> steps) {
    return build.each(steps, this::step);
  }

  private @Nullable Step step(StepContext step) {
    if (step instanceof StepDoContext s) {
      return new Step.Do(leaves.text(s.TEXT()), leaves.line(s));
    }
    if (step instanceof StepConfirmContext s) {
      return new Step.Confirm(leaves.optionalName(s.name()), leaves.text(s.TEXT()), leaves.line(s));
    }
    if (step instanceof StepRecordContext s) {
      return new Step.Record(
          leaves.name(s.name()),
          leaves.text(s.TEXT()),
          leaves.unit(s.unit()),
          s.limit() == null ? null : limits.limit(s.limit()),
          leaves.line(s));
    }
    if (step instanceof StepWaitContext s) {
      return new Step.Wait(
          leaves.amount(s.amount()), leaves.optionalText(s.TEXT()), leaves.line(s));
    }
    if (step instanceof StepCautionContext s) {
      return new Step.Caution(leaves.name(s.name()), leaves.text(s.TEXT()), leaves.line(s));
    }
    if (step instanceof StepPerformContext s) {
      return new Step.Perform(leaves.ref(s.ref()).parts(), leaves.line(s));
    }
    return step instanceof StepChooseContext s ? choose(s) : null;
  }

  private Step choose(StepChooseContext choose) {
    List<Word> texts = new ArrayList<>();
    for (var text : choose.TEXT()) {
      texts.add(leaves.text(text));
    }
    int outcomes = choose.PASS() == null ? texts.size() : texts.size() - 1;
    return new Step.Choose(
        leaves.name(choose.name()),
        texts.get(0),
        List.copyOf(texts.subList(1, outcomes)),
        choose.PASS() == null ? null : texts.get(outcomes),
        leaves.line(choose));
  }
}
