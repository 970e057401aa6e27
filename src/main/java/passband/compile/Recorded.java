package passband.compile;

import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.plan.Slot;
import passband.syntax.Adjust;
import passband.syntax.Step;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * What the technician records, by name, and how often: a text that names a record must say which of
 * its values is meant.
 */
final class Recorded {
  private final Diagnostics diagnostics;
  private final Map<String, Word> places = new HashMap<>();
  private final Map<String, One> records = new LinkedHashMap<>();
  private final Map<Tree.Test, Times> times = new IdentityHashMap<>();

  /** A record or choice and the place where it is answered. */
  private record One(Word name, Word text, TextPlace place) {}

  /** How often a test is done, and at how many points each time. */
  private record Times(int runs, int points) {}

  Recorded(Diagnostics diagnostics) {
    this.diagnostics = diagnostics;
  }

  /**
   * Makes the names of a procedure's records and choices known; two steps that ask under one name
   * are an error.
   */
  void declare(Tree.Procedure procedure) {
    for (Tree.Part part : procedure.parts()) {
      if (part instanceof Tree.Section section) {
        declare(section.steps(), TextPlace.OUTSIDE);
      } else if (part instanceof Adjust adjust) {
        declare(adjust.steps(), TextPlace.OUTSIDE);
      } else if (part instanceof Tree.Test test) {
        for (Tree.Steps block : test.steps()) {
          boolean atPoint = block.replacing() != null || block.when() == Tree.Steps.When.EACH;
          declare(block.steps(), new TextPlace(test, atPoint, Map.of()));
        }
      }
    }
  }

  private void declare(List<Step> steps, TextPlace place) {
    for (Step step : steps) {
      if (step instanceof Step.Record record) {
        declare(record.name(), record.text(), place);
      } else if (step instanceof Step.Choose choose) {
        declare(choose.name(), choose.text(), place);
      } else if (step instanceof Step.Confirm confirm && confirm.name() != null) {
        take(confirm.name());
      }
    }
  }

  private void declare(Word name, Word text, TextPlace place) {
    take(name);
    records.putIfAbsent(name.text(), new One(name, text, place));
  }

  private void take(Word name) {
    Word first = places.putIfAbsent(name.text(), name);
    if (first != null && first != name) {
      diagnostics
          .say(Code.DUPLICATE_NAME, name.span(), "'%s' is recorded twice", name.text())
          .note(first.span(), "first recorded here");
    }
  }

  /** Says how often a test is done, and at how many points each time. */
  void count(Tree.Test test, int runs, int points) {
    times.put(test, new Times(runs, points));
  }

  /** The records as values of placeholders in texts at a place. */
  Map<String, Placeholders.Value> seenFrom(TextPlace place) {
    Map<String, Placeholders.Value> values = new LinkedHashMap<>();
    records.forEach(
        (name, one) ->
            values.put(
                name,
                new Placeholders.Value(
                    Slot.RECORD, one.text.text(), one.name, often(one.place, place))));
    return values;
  }

  /** How many values of a record a text may mean: one where both belong to one run or point. */
  private int often(TextPlace recorded, TextPlace text) {
    if (recorded.test() == null) {
      return 1;
    }
    Times often = times.getOrDefault(recorded.test(), new Times(1, 1));
    int runs = recorded.test() == text.test() ? 1 : often.runs;
    boolean samePoint = recorded.test() == text.test() && text.atPoint();
    return runs * (recorded.atPoint() && !samePoint ? often.points : 1);
  }
}
