package passband.faults;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import passband.diff.ChangeGroup;
import passband.diff.Kind;
import passband.diff.PlanDiff;
import passband.plan.Plan;
import passband.render.DiffReport;
import passband.testing.Repository;
import passband.testing.Snippet;

/**
 * A reviewer is told of one edit in few groups: a library with one edit that can still be built,
 * compared with the library as it was.
 */
class OneEditTest {
  /** An edit may reach what no line of it tells: the order of the bench, an unused allow. */
  private static final int MOST = 3;

  private static final int PAIRS = 200;

  private static final Pattern NUMBER = Pattern.compile("([ |]\\d*)(\\d)(?=[ ,])");

  private final Map<String, String> library = Repository.texts(Repository.LIBRARY);
  private final Map<String, Plan> clean = new TreeMap<>();

  /** One edit of one file. */
  private record Edit(String file, String text, String what) {}

  @Test
  void oneEditIsFewGroupsAndNoneIsSilent() {
    List<String> many = new ArrayList<>();
    int pairs = 0;
    int single = 0;
    for (Edit edit : edits()) {
      String main = FaultBench.concerned(edit.file).get(0);
      Map<String, String> files = new TreeMap<>(library);
      files.put(edit.file, edit.text);
      Snippet edited = Snippet.compile(files, main, null);
      if (edited.diagnostics().stream().anyMatch(d -> !d.code().allowable())) {
        continue;
      }
      Plan was = clean.computeIfAbsent(main, m -> Snippet.compile(library, m, null).plans().get(0));
      List<ChangeGroup> groups = new ArrayList<>();
      List<PlanDiff> diffs = PlanDiff.between(List.of(was), edited.plans());
      diffs.forEach(diff -> groups.addAll(diff.groups()));
      boolean same = was.digest().equals(edited.plans().get(0).digest());
      assertEquals(same, groups.isEmpty(), edit.what);
      groups.removeIf(group -> group.kind() == Kind.SAME_REVISION);
      pairs += same ? 0 : 1;
      single += groups.size() == 1 ? 1 : 0;
      if (groups.size() > MOST) {
        many.add(edit.what + "\n" + DiffReport.text(diffs, false));
      }
    }
    System.out.printf("%d edits that change the meaning, %d told in one group%n", pairs, single);
    assertTrue(pairs >= PAIRS, pairs + " pairs");
    assertEquals(List.of(), many);
  }

  /** The seeded faults; and every line taken out, or with its first number changed. */
  private List<Edit> edits() {
    List<Edit> edits = new ArrayList<>();
    for (SeededFault fault : SeededFault.all()) {
      String text = fault.in(library.get(fault.file()));
      edits.add(new Edit(fault.file(), text, fault.toString()));
    }
    library.forEach(
        (file, text) -> {
          List<String> lines = List.of(text.split("\n", -1));
          for (int i = 0; i < lines.size(); i++) {
            edits.add(edit(file, lines, i, ""));
            edits.add(edit(file, lines, i, anotherNumber(lines.get(i))));
          }
        });
    return edits;
  }

  /** The first number with another last digit. */
  private static String anotherNumber(String line) {
    return NUMBER
        .matcher(line)
        .replaceFirst(
            m -> m.group(1) + (char) (m.group(2).equals("9") ? '8' : m.group(2).charAt(0) + 1));
  }

  private static Edit edit(String file, List<String> lines, int at, String line) {
    List<String> edited = new ArrayList<>(lines);
    edited.set(at, line);
    String what = file + ":" + (at + 1) + ": '" + lines.get(at) + "' is '" + line + "'";
    return new Edit(file, String.join("\n", edited), what);
  }
}
