package passband.faults;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.TextReport;
import passband.limit.Limit;
import passband.plan.Plan;
import passband.plan.Point;
import passband.render.StepsReport;
import passband.testing.Repository;
import passband.testing.Snippet;

/** Compiles the tests' library with a fault in it. */
final class FaultBench {
  private static final String TEASEL = "teasel/teasel-output.pband";
  private static final String YARROW = "yarrow/yarrow-service.pband";
  private static final String SUNDEW = "sundew/sundew-energy.pband";

  /** A file that uses every procedure that is concerned. */
  private static final String WHOLE = "whole.pband";

  /** The analyzer that a procedure is built for in place of its own, and the file that it is in. */
  private static final String OTHER = "gravel";

  private static final String OTHER_FILE = "analyzers/gravel.pband";

  /**
   * What was said of a fault.
   *
   * @param messages of all procedures that have the fault, as a check of the whole library gives
   *     them
   * @param placed whether one of them, or a note of it, stands where the fault is
   * @param same whether what is done and what is accepted is as it was without the fault
   */
  record Outcome(SeededFault fault, List<Diagnostic> messages, boolean placed, boolean same) {
    boolean stopsTheBuild() {
      return messages.stream().anyMatch(Diagnostic::isError);
    }

    @Override
    public String toString() {
      return fault + "\n" + TextReport.of(messages);
    }
  }

  private final Map<String, String> withoutFault = new HashMap<>();
  private final Map<String, String> library = Repository.texts(Repository.LIBRARY);

  /** The text of a file without a fault. */
  String clean(String file) {
    return library.get(file);
  }

  /** The procedures that are concerned when a file changes. */
  static List<String> concerned(String file) {
    return switch (file) {
      case "leads.pband" -> List.of(TEASEL, YARROW, SUNDEW);
      case "analyzers/shale.pband" -> List.of(TEASEL, YARROW);
      case OTHER_FILE -> List.of(TEASEL);
      case "rules.pband" -> List.of(YARROW);
      case "analyzers/chalk.pband" -> List.of(SUNDEW);
      default ->
          file.startsWith("teasel/")
              ? List.of(TEASEL)
              : file.startsWith("yarrow/") ? List.of(YARROW) : List.of(SUNDEW);
    };
  }

  /** Compiles what a fault concerns. */
  Outcome outcome(SeededFault fault) {
    Map<String, String> files = new TreeMap<>(library);
    String clean = clean(fault.file());
    files.put(fault.file(), fault.in(clean));
    FaultPlace place = FaultPlace.of(fault, clean);
    List<String> concerned = concerned(fault.file());
    StringBuilder uses = new StringBuilder();
    concerned.forEach(main -> uses.append("use \"").append(main).append("\"\n"));
    files.put(WHOLE, uses.toString());
    String main = concerned.size() == 1 ? concerned.get(0) : WHOLE;
    boolean other = fault.file().equals(OTHER_FILE);
    Snippet faulty = compiled(files, main, other);
    files.put(fault.file(), clean);
    String before = clean(files, main, other);
    List<Diagnostic> messages = faulty.diagnostics();
    return new Outcome(
        fault,
        messages,
        messages.stream().anyMatch(m -> is(m, place)),
        done(faulty).equals(before));
  }

  private String clean(Map<String, String> files, String main, boolean other) {
    String key = other + " " + main + " " + files.get(WHOLE);
    return withoutFault.computeIfAbsent(key, k -> done(compiled(files, main, other)));
  }

  /** Every step, every limit, and what the sheet says is unknown. */
  private static String done(Snippet snippet) {
    StringBuilder done = new StringBuilder();
    for (Plan plan : snippet.plans()) {
      done.append(StepsReport.text(plan));
      for (Point point : plan.points()) {
        point.limits().forEach(limit -> limits(done.append(point.id()).append(' '), limit));
      }
    }
    return done.toString();
  }

  private static void limits(StringBuilder done, Limit limit) {
    done.append(limit.quantity()).append(' ').append(limit.words(limit.printed())).append('\n');
  }

  private static boolean is(Diagnostic message, FaultPlace place) {
    return place.holds(message.span())
        || message.notes().stream().anyMatch(note -> place.holds(note.span()));
  }

  private static Snippet compiled(Map<String, String> files, String main, boolean other) {
    return other ? retargeted(files, main, OTHER) : Snippet.compile(files, main, null);
  }

  /** A procedure for another analyzer, which is in a file of its name. */
  static Snippet retargeted(Map<String, String> files, String main, String analyzer) {
    Map<String, String> both = new TreeMap<>(files);
    both.put("both.pband", "use \"" + main + "\"\nuse \"analyzers/" + analyzer + ".pband\"\n");
    return Snippet.compile(both, "both.pband", analyzer);
  }
}
