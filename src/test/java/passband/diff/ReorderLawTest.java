package passband.diff;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import passband.plan.Plan;
import passband.render.Checklist;
import passband.testing.Repository;
import passband.testing.Snippet;

/**
 * Neighbours of every block of devices, instruments, leads and procedures change places. Where what
 * is printed stays as it was, the digest does and there is no difference; else a difference is told
 * as an order, and never as anything that it is not.
 */
class ReorderLawTest {
  private static final Set<Kind> ORDERS =
      EnumSet.of(Kind.ORDER, Kind.ORDER_ACROSS, Kind.SAME_REVISION);

  /**
   * What an order of a procedure's parts brings about besides: the settings that a test begins with
   * depend on the one before, what is read again on the adjustment before; a caution may come too
   * late, and of two loads with one value the first is set.
   */
  private static final Map<String, Set<Kind>> BESIDES =
      Map.of(
          "test", EnumSet.of(Kind.STEP),
          "gate", EnumSet.of(Kind.CONDITION, Kind.GATE_ADDED),
          "adjust", EnumSet.of(Kind.CONDITION),
          "caution", EnumSet.of(Kind.CAUTION_CHANGED),
          "perform", EnumSet.of(Kind.STOP),
          "load", EnumSet.of(Kind.ANALYZER));

  private static final int TRIED = 500;

  /** Lines of a file that belong together: a line, or a block from its opening line to its end. */
  private record Item(int from, int to, int block) {}

  @Test
  void whatIsPrintedTells() {
    List<String> faults = new ArrayList<>();
    Set<String> kinds = new TreeSet<>();
    int tried = 0;
    tried += library(Repository.LIBRARY, "teasel/teasel-output.pband", faults, kinds);
    tried += library(Repository.LIBRARY, "yarrow/yarrow-service.pband", faults, kinds);
    tried +=
        library(Repository.ROOT.resolve("src/test/resources/meaning"), "all.pband", faults, kinds);
    System.out.println(tried + " pairs of neighbours that may change places: " + kinds);
    assertEquals(List.of(), faults, () -> faults.size() + "\n" + String.join("\n", faults));
    assertTrue(tried >= TRIED, tried + " tried");
    assertTrue(
        kinds.containsAll(
            List.of(
                "action", "connect", "contact", "jack", "lead", "measure", "mode", "outlet", "pole",
                "setup", "state", "test")),
        kinds.toString());
  }

  private static int library(
      java.nio.file.Path folder, String main, List<String> faults, Set<String> kinds) {
    Map<String, String> library = Repository.texts(folder);
    List<Plan> was = Snippet.compile(library, main, null).plans();
    int tried = 0;
    for (String file : library.keySet()) {
      List<String> lines =
          new ArrayList<>(
              List.of(library.get(file).replace("}  setup", "}\n  setup").split("\n", -1)));
      lines.removeIf(line -> line.isBlank() || line.strip().startsWith("#"));
      List<Item> items = file.endsWith(".pband") ? items(lines) : List.of();
      for (Item first : items) {
        Item second = next(items, first);
        if (second == null) {
          continue;
        }
        Map<String, String> swapped = new TreeMap<>(library);
        swapped.put(file, swapped(lines, first, second));
        Snippet now = Snippet.compile(swapped, main, null);
        if (now.plans().size() == was.size()
            && now.diagnostics().stream().allMatch(d -> d.code().allowable())) {
          tried++;
          kinds.add(word(lines, first));
          kinds.add(word(lines, second));
          String at = file + ":" + (first.from + 1) + ": " + lines.get(first.from).strip();
          compare(was, now.plans(), at, word(lines, first), faults);
        }
      }
    }
    return tried;
  }

  private static void compare(
      List<Plan> was, List<Plan> now, String at, String word, List<String> faults) {
    for (int i = 0; i < was.size(); i++) {
      Plan old = was.get(i);
      Plan fresh = now.get(i);
      boolean printed = printed(old).equals(printed(fresh));
      boolean meant = old.digest().equals(fresh.digest());
      List<PlanDiff> diffs = PlanDiff.between(List.of(old), List.of(fresh));
      String what = at + " in " + old.name();
      if (printed && !meant) {
        faults.add(what + ": nothing printed changes, but the digest does: " + diffs);
      }
      if (!printed && meant) {
        faults.add(what + ": the sheet changes, and the digest does not");
      }
      if (meant != diffs.isEmpty()) {
        faults.add(what + ": the difference is not the digest's: " + diffs);
      }
      diffs.forEach(
          diff ->
              diff.changes().stream()
                  .filter(change -> !ORDERS.contains(change.kind()))
                  .filter(change -> !BESIDES.getOrDefault(word, Set.of()).contains(change.kind()))
                  .forEach(change -> faults.add(what + ": " + change)));
    }
  }

  /** All that is printed of a procedure but its digest. */
  private static String printed(Plan plan) {
    String page = Checklist.of(plan);
    return page.replace(plan.digest(), "").replace(plan.digest().substring(0, 12), "");
  }

  private static String word(List<String> lines, Item item) {
    return lines.get(item.from).strip().split("\\s+")[0];
  }

  private static Item next(List<Item> items, Item first) {
    for (Item other : items) {
      if (other.block == first.block && other.from == first.to + 1) {
        return other;
      }
    }
    return null;
  }

  private static String swapped(List<String> lines, Item first, Item second) {
    List<String> swapped = new ArrayList<>(lines.subList(0, first.from));
    swapped.addAll(lines.subList(second.from, second.to + 1));
    swapped.addAll(lines.subList(first.from, first.to + 1));
    swapped.addAll(lines.subList(second.to + 1, lines.size()));
    return String.join("\n", swapped);
  }

  /** Every line and block within a block. */
  private static List<Item> items(List<String> lines) {
    List<Item> items = new ArrayList<>();
    List<Integer> open = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i).strip();
      if (line.startsWith("}")) {
        int from = open.remove(open.size() - 1);
        if (!open.isEmpty()) {
          items.add(new Item(from, i, open.get(open.size() - 1)));
        }
      } else if (line.endsWith("{")) {
        open.add(i);
      } else if (!open.isEmpty()) {
        items.add(new Item(i, i, open.get(open.size() - 1)));
      }
    }
    return items;
  }
}
