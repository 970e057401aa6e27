package passband.faults;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
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
 * Pairs of libraries with one known change each, in procedures, devices, instruments, leads, rules
 * and tables: what can be done to a line of a kind, at every such line. None is silent, none is
 * said to be what it is not, and one change is told in three groups at the most.
 */
class KnownChangesTest {
  private static final int MOST = 3;
  private static final int PAIRS = 200;

  private final Map<String, String> library = Repository.texts(Repository.LIBRARY);
  private final Map<String, Plan> clean = new TreeMap<>();

  /** What is done to a text that matches, and what the worst that a reviewer is told may be. */
  private record Change(String what, String file, String pattern, Edit edit, Set<Kind> worst) {}

  private interface Edit {
    String of(MatchResult match);
  }

  private static Change change(
      String what, String file, String pattern, Edit edit, Kind first, Kind... others) {
    return new Change(what, file, pattern, edit, EnumSet.of(first, others));
  }

  private static Edit gone() {
    return match -> "";
  }

  /** The number in the first group times a factor in per cent; what is around it stays. */
  private static Edit times(int percent) {
    return match -> {
      String number = match.group(1);
      java.math.BigDecimal value =
          new java.math.BigDecimal(number)
              .multiply(java.math.BigDecimal.valueOf(percent))
              .divide(java.math.BigDecimal.valueOf(100))
              .stripTrailingZeros();
      int start = match.start(1) - match.start();
      return match.group().substring(0, start)
          + value.toPlainString()
          + match.group().substring(start + number.length());
    };
  }

  private static Edit instead(String from, String to) {
    return match -> match.group().replaceFirst(from, Matcher.quoteReplacement(to));
  }

  private static final String PROCEDURE = ".*-(output|service|energy)\\.pband";
  private static final String DEVICE = "(teasel/teasel|yarrow/yarrow|sundew/sundew)\\.pband";
  private static final String ANALYZER = "analyzers/(shale|chalk)\\.pband";

  private static List<Change> procedureChanges() {
    return List.of(
        change("caution gone", PROCEDURE, "(?m)^  caution .*\n", gone(), Kind.CAUTION_REMOVED),
        change(
            "caution weakened",
            PROCEDURE,
            "(?m)^  caution .*\\.\"$",
            instead("\\.\"$", " where that is possible.\""),
            Kind.CAUTION_CHANGED),
        change("tick gone", PROCEDURE, "(?m)^ +confirm .*\n", gone(), Kind.CHECK_REMOVED),
        change(
            "tick reworded",
            PROCEDURE,
            "(?m)^ +confirm .*\"$",
            instead("\"$", " Or nearly.\""),
            Kind.CHECK_CHANGED),
        change("record gone", PROCEDURE, "(?m)^ +record .*\n", gone(), Kind.CHECK_REMOVED),
        change(
            "record reworded",
            PROCEDURE,
            "(?m)^ +record .*\"$",
            instead("\"$", ", if any\""),
            Kind.CHECK_CHANGED),
        change("instruction gone", PROCEDURE, "(?m)^ +do .*\n", gone(), Kind.STEP, Kind.STOP),
        change(
            "instruction reworded",
            PROCEDURE,
            "(?m)^ +do .*\\.\"$",
            instead("\\.\"$", ", more or less.\""),
            Kind.STEP,
            Kind.STOP),
        change(
            "test renamed on the sheet",
            PROCEDURE,
            "(?m)^  test \\S+ \"",
            instead("\"$", "\"Other: "),
            Kind.TEXT),
        change(
            "setup renamed on the sheet",
            PROCEDURE,
            "(?m)^  setup \\S+ \"",
            instead("\"$", "\"Other: "),
            Kind.TEXT),
        change(
            "section renamed on the sheet",
            PROCEDURE,
            "(?m)^  section \\S+ \"",
            instead("\"$", "\"Other: "),
            Kind.TEXT),
        change(
            "row gone",
            PROCEDURE,
            "(?m)^      (?!mode |supply )\\w.*\\|.*\n",
            gone(),
            Kind.POINT_REMOVED,
            Kind.MODE_UNTESTED),
        change(
            "stated lower limit less",
            PROCEDURE,
            "\\| (\\d+) to \\d+(?=\n)",
            times(99),
            Kind.LOOSENED,
            Kind.RULE),
        change(
            "stated upper limit less",
            PROCEDURE,
            "\\| \\d+ to (\\d+)(?=\n)",
            times(99),
            Kind.TIGHTENED),
        change(
            "tolerance wider",
            PROCEDURE,
            "accept +power within (\\d+) %",
            times(110),
            Kind.LOOSENED),
        change(
            "tolerance narrower",
            PROCEDURE,
            "accept +power within (\\d+) %",
            times(95),
            Kind.TIGHTENED),
        change(
            "upper limit wider",
            PROCEDURE,
            "accept [-\\w]+ at most (\\d+(\\.\\d+)?) ",
            times(110),
            Kind.LOOSENED),
        change(
            "upper limit narrower",
            PROCEDURE,
            "accept [-\\w]+ at most (\\d+(\\.\\d+)?) ",
            times(90),
            Kind.TIGHTENED),
        change(
            "alarm's lower limit less",
            PROCEDURE,
            "accept +trip from (\\d+) ohm",
            times(80),
            Kind.LOOSENED),
        change(
            "alarm's upper limit less",
            PROCEDURE,
            "accept +trip from \\d+ ohm to (\\d+) ohm",
            times(80),
            Kind.TIGHTENED),
        change("on-time longer", PROCEDURE, "on-time (\\d+) s", times(120), Kind.DUTY),
        change(
            "guard gone",
            PROCEDURE,
            "decision guarded",
            m -> "decision simple",
            Kind.DECISION_LOOSER),
        change(
            "guard wider",
            PROCEDURE,
            "decision guarded",
            m -> "decision guarded coverage 2.5",
            Kind.DECISION),
        change("guard new", PROCEDURE, "decision simple", m -> "decision guarded", Kind.DECISION),
        change(
            "another outcome passes",
            PROCEDURE,
            "pass \"red\"",
            m -> "pass \"green\"",
            Kind.CHECK_CHANGED),
        change("any outcome passes", PROCEDURE, " pass \"red\"", gone(), Kind.CHECK_CHANGED),
        change(
            "outlet gone",
            PROCEDURE,
            "outlet +mono-1, mono-2",
            m -> "outlet mono-1",
            Kind.TEST_REMOVED),
        change("link gone", PROCEDURE, "(?m)^ +link .*\n", gone(), Kind.CONNECTION),
        change(
            "adjustment affects less",
            PROCEDURE,
            ", carve-curve \\{",
            m -> " {",
            Kind.TEST_REMOVED),
        change(
            "sweep's step finer",
            PROCEDURE,
            "step (5) ohm until",
            times(200),
            Kind.UNCERTAINTY_MORE),
        change("reason reworded", PROCEDURE, "because \"", m -> "because \"so ", Kind.ALLOW_ADDED),
        change("title", PROCEDURE, "(?m)^procedure \\S+ \"", instead("\"$", "\"New "), Kind.TEXT),
        change(
            "calculation",
            PROCEDURE,
            "peak-voltage / voltage,",
            m -> "1.1 * peak-voltage / voltage,",
            Kind.CALCULATION));
  }

  private static List<Change> profileChanges() {
    return List.of(
        change(
            "outlet's printed name",
            DEVICE,
            "(?m)(?<=outlet )[-\\w]+ \"",
            instead("\"$", "\"New "),
            Kind.PROFILE),
        change(
            "mode's printed name",
            DEVICE,
            "(?m)^  mode \\S+ \"",
            instead("\"$", "\"New "),
            Kind.PROFILE),
        change(
            "terminal's printed name",
            DEVICE,
            "(?m)^    (pole|contact|earth) +\\S+ +\"",
            instead("\"$", "\"new "),
            Kind.PROFILE,
            Kind.CONNECTION),
        change(
            "setting's end", DEVICE, "setting +power \\d+ W to (\\d+) W", times(200), Kind.PROFILE),
        change("bound wider", DEVICE, "peak-voltage at most (\\d+) V", times(102), Kind.LOOSENED),
        change(
            "bound narrower", DEVICE, "peak-voltage at most (\\d+) V", times(98), Kind.TIGHTENED),
        change("output wider", DEVICE, "output +power within (\\d+) %", times(110), Kind.LOOSENED),
        change(
            "output narrower", DEVICE, "output +power within (\\d+) %", times(95), Kind.TIGHTENED),
        change("duty's rest", DEVICE, "s on, (\\d+) s off", times(150), Kind.DUTY),
        change("duty's on", DEVICE, "duty +(\\d+) s on", times(120), Kind.DUTY),
        change(
            "contact",
            DEVICE,
            "activate by cut-switch",
            m -> "activate by coag-switch",
            Kind.CONTACT,
            Kind.CONNECTION),
        change(
            "device's action",
            DEVICE,
            "(?m)^  action \\S+ +\".*\"$",
            instead("\"$", " Twice.\""),
            Kind.STEP,
            Kind.PROFILE,
            Kind.STOP),
        change(
            "enter a state",
            DEVICE,
            "(?m)^    enter .*\"$",
            instead("\"$", " Twice.\""),
            Kind.STATE),
        change(
            "leave a state",
            DEVICE,
            "(?m)^    leave .*\"$",
            instead("\"$", " Twice.\""),
            Kind.STATE),
        change(
            "state's printed name",
            DEVICE,
            "(?m)^  state \\S+ \"",
            instead("\"$", "\"also "),
            Kind.TEXT),
        change(
            "error greater",
            ANALYZER,
            "error +(\\d+(\\.\\d+)?) % of reading",
            times(101),
            Kind.UNCERTAINTY_MORE,
            Kind.ANALYZER,
            Kind.TIGHTENED),
        change(
            "error less",
            ANALYZER,
            "error +(\\d+(\\.\\d+)?) % of reading",
            times(99),
            Kind.UNCERTAINTY_LESS,
            Kind.ANALYZER),
        change(
            "load's error greater",
            ANALYZER,
            "error +(\\d) %\n",
            times(150),
            Kind.UNCERTAINTY_MORE,
            Kind.ANALYZER),
        change("load's power", ANALYZER, "(\\d+) W for", times(150), Kind.ANALYZER),
        change(
            "range's end",
            ANALYZER,
            "range +\\S+ \\S+ to (\\d+) ",
            times(150),
            Kind.ANALYZER,
            Kind.UNCERTAINTY_LESS,
            Kind.UNCERTAINTY_MORE,
            Kind.RE_ROUNDED,
            Kind.LOOSENED,
            Kind.TIGHTENED),
        change(
            "jack's label",
            ANALYZER,
            "(?m)^  (jack|key) +\\S+ +\"",
            instead("\"$", "\"New "),
            Kind.ANALYZER),
        change("settling", ANALYZER, "settle (\\d) s", times(200), Kind.DUTY),
        change(
            "instrument's action",
            ANALYZER,
            "(?m)^  action (?!stop)\\S+ +\".*\"$",
            instead("\"$", " Twice.\""),
            Kind.ANALYZER,
            Kind.STEP),
        change(
            "how it stops",
            ANALYZER,
            "(?m)^  action stop +\".*\"$",
            instead("\"$", " Twice.\""),
            Kind.STOP),
        change(
            "instrument's printed name",
            ANALYZER,
            "(?m)^analyzer \\S+ \"",
            instead("\"$", "\"New "),
            Kind.ANALYZER),
        change("lead bears more", "leads.pband", "rated (\\d+) k?V", times(200), Kind.LEAD),
        change("lead's colour", "leads.pband", "colour \\w+", m -> "colour pink", Kind.TEXT),
        change(
            "lead's printed name",
            "leads.pband",
            "(?m)^  (lead|link) \\S+ +\"",
            instead("\"$", "\"new "),
            Kind.TEXT,
            Kind.LEAD),
        change(
            "rule narrower", "rules.pband", "within (20) %", m -> "within 19.9 %", Kind.TIGHTENED),
        change(
            "rule's floor lower", "rules.pband", "or (4) W", times(75), Kind.TIGHTENED, Kind.RULE),
        change(
            "table's lower limit", ".*\\.csv", "(?m),(\\d+) to \\d+$", times(101), Kind.TIGHTENED),
        change(
            "table's upper limit",
            ".*\\.csv",
            "(?m),\\d+ to (\\d+)$",
            times(99),
            Kind.TIGHTENED,
            Kind.RULE),
        change(
            "table's row gone",
            ".*\\.csv",
            "(?m)^carve.*\n",
            gone(),
            Kind.POINT_REMOVED,
            Kind.MODE_UNTESTED));
  }

  /** What is written otherwise and means the same. */
  private static List<Change> noChanges() {
    Set<Kind> none = EnumSet.noneOf(Kind.class);
    return List.of(
        new Change(
            "comment",
            ".*\\.pband",
            "(?m)^  (test|mode|jack|lead|section) ",
            m -> "  # said here\n" + m.group(),
            none),
        new Change(
            "layout",
            ".*\\.pband",
            "(?m)^  (setup|mode|key|action) ",
            m -> "\n\n      " + m.group(),
            none),
        new Change(
            "unit",
            DEVICE,
            "(\\d+) V\n",
            m -> "0." + "0".repeat(Math.max(0, 3 - m.group(1).length())) + m.group(1) + " kV\n",
            none),
        new Change(
            "digits",
            ".*\\.pband",
            " (\\d+) (W|V|s|ohm)(?=[ ,\n])",
            m -> " " + m.group(1) + ".0 " + m.group(2),
            none));
  }

  @Test
  void everyKnownChangeIsToldAsWhatItIs() {
    List<String> faults = new ArrayList<>();
    Set<String> untried = new java.util.TreeSet<>();
    int pairs = 0;
    for (List<Change> changes : List.of(procedureChanges(), profileChanges(), noChanges())) {
      for (Change change : changes) {
        int tried = tried(change, faults);
        pairs += tried;
        if (tried == 0) {
          untried.add(change.what);
        }
      }
    }
    System.out.println(pairs + " pairs with one known change each");
    assertEquals(List.of(), faults, () -> faults.size() + "\n" + String.join("\n", faults));
    assertEquals(Set.of(), untried);
    assertTrue(pairs >= PAIRS, pairs + " pairs");
  }

  /** At every place that matches and can be built so. */
  private int tried(Change change, List<String> faults) {
    int pairs = 0;
    for (Map.Entry<String, String> file : library.entrySet()) {
      if (!file.getKey().matches(change.file)) {
        continue;
      }
      Matcher matcher = Pattern.compile(change.pattern).matcher(file.getValue());
      while (matcher.find()) {
        String text = file.getValue();
        String edited =
            text.substring(0, matcher.start())
                + change.edit.of(matcher.toMatchResult())
                + text.substring(matcher.end());
        String at = file.getKey() + ":" + text.substring(0, matcher.start()).lines().count();
        pairs += pair(change, file.getKey(), edited, at, faults);
      }
    }
    return pairs;
  }

  private int pair(Change change, String file, String text, String at, List<String> faults) {
    for (String main : FaultBench.concerned(file)) {
      int tried = pair(change, main, file, text, at, faults);
      if (tried > 0) {
        return tried;
      }
    }
    return 0;
  }

  /** None where it cannot be built, or a change is of nothing that the procedure uses. */
  private int pair(
      Change change, String main, String file, String text, String at, List<String> faults) {
    Map<String, String> files = new TreeMap<>(library);
    files.put(file, text);
    Snippet edited = Snippet.compile(files, main, null);
    if (edited.diagnostics().stream().anyMatch(d -> !d.code().allowable())) {
      return 0;
    }
    Plan was = clean.computeIfAbsent(main, m -> Snippet.compile(library, m, null).plan());
    boolean silent = was.digest().equals(edited.plan().digest());
    if (silent && file.equals("leads.pband") && !change.worst.isEmpty()) {
      return 0; // of a set that this procedure does not name; the next one does
    }
    List<PlanDiff> diffs = PlanDiff.between(List.of(was), edited.plans());
    List<ChangeGroup> groups = new ArrayList<>();
    diffs.forEach(diff -> groups.addAll(diff.groups()));
    groups.removeIf(group -> group.kind() == Kind.SAME_REVISION);
    boolean right =
        change.worst.isEmpty()
            ? groups.isEmpty() && was.digest().equals(edited.plan().digest())
            : !groups.isEmpty()
                && groups.size() <= MOST
                && change.worst.contains(groups.get(0).kind());
    if (!right) {
      faults.add(change.what + " at " + at + "\n" + DiffReport.text(diffs, false));
    }
    return 1;
  }
}
