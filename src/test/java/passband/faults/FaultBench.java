package passband.faults;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.TextReport;
import passband.testing.Repository;
import passband.testing.Snippet;

/** Compiles the tests' library with a fault in it. */
final class FaultBench {
  private static final String TEASEL = "teasel/teasel-output.pband";
  private static final String YARROW = "yarrow/yarrow-service.pband";
  private static final String SUNDEW = "sundew/sundew-energy.pband";

  /** The analyzer that a procedure is built for in place of its own, and the file that it is in. */
  private static final String OTHER = "gravel";

  private static final String OTHER_FILE = "analyzers/gravel.pband";

  /**
   * What was said of a fault.
   *
   * @param messages of all procedures that have the fault, each once
   * @param placed whether one of them, or a note of it, stands where the fault is
   */
  record Outcome(SeededFault fault, List<Diagnostic> messages, boolean placed) {
    boolean stopsTheBuild() {
      return messages.stream().anyMatch(Diagnostic::isError);
    }

    @Override
    public String toString() {
      return fault + "\n" + TextReport.of(messages);
    }
  }

  private final Map<String, String> library = Repository.texts(Repository.LIBRARY);

  /** The text of a file without a fault. */
  String clean(String file) {
    return library.get(file);
  }

  /** The procedures that are concerned when a file changes. */
  private static List<String> concerned(String file) {
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
    TreeSet<Diagnostic> messages = new TreeSet<>();
    for (String main : concerned(fault.file())) {
      messages.addAll(compiled(files, main, fault.file().equals(OTHER_FILE)).diagnostics());
    }
    return new Outcome(fault, List.copyOf(messages), messages.stream().anyMatch(m -> is(m, place)));
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
