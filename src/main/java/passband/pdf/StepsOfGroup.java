package passband.pdf;

import java.util.ArrayList;
import java.util.List;
import passband.render.Sheet;

/**
 * What is done for each line of a table: numbered, in two columns where the sentences are short.
 */
final class StepsOfGroup {
  /** Fewer are under each other. */
  private static final int FEW = 4;

  private static final double BETWEEN = 14;

  private final PartWriter write;
  private final List<Part> parts = new ArrayList<>();
  private final List<String> waiting = new ArrayList<>();
  private final String list;

  private StepsOfGroup(PartWriter write) {
    this.write = write;
    this.list = "how-" + write.next();
  }

  /** The parts, each staying with the next. */
  static List<Part> of(Sheet.Group group, PartWriter write) {
    StepsOfGroup steps = new StepsOfGroup(write);
    for (Sheet.StepLine step : group.steps()) {
      if (step.kind().equals("caution")) {
        steps.numbered();
        steps.parts.add(write.cautionPart(write.path("P:" + write.next()), step.text()).kept());
      } else {
        steps.waiting.add(step.text());
      }
    }
    steps.numbered();
    return steps.parts;
  }

  private void numbered() {
    double width = (write.inner() - BETWEEN) / 2;
    int before = write.numbered(waiting.size());
    List<TextPart> half = items(before, width);
    boolean inColumns = half.size() >= FEW;
    for (TextPart item : half) {
      inColumns &= !item.isHigherThan(ColumnsPart.MOST);
    }
    if (inColumns) {
      int middle = middle(half);
      parts.add(
          new ColumnsPart(
              half.subList(0, middle), half.subList(middle, half.size()), width + BETWEEN));
    } else {
      items(before, write.inner()).forEach(item -> parts.add(item.kept()));
    }
    waiting.clear();
  }

  private List<TextPart> items(int before, double width) {
    List<TextPart> items = new ArrayList<>();
    for (int i = 0; i < waiting.size(); i++) {
      items.add(write.item(list, before + i + 1, waiting.get(i), false, width));
    }
    return items;
  }

  /** How many stand at the left so that both columns together are low. */
  private static int middle(List<TextPart> items) {
    double all = 0;
    for (TextPart item : items) {
      all += item.height();
    }
    int count = 0;
    double left = 0;
    while (count < items.size() && left + items.get(count).height() <= all - left) {
      left += items.get(count).height();
      count++;
    }
    return count;
  }
}
