package passband.faults;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import passband.testing.Repository;
import passband.testing.Snippet;

/** Procedures in which nothing is wrong, and what is said of them. */
final class CleanProcedures {
  private static final String TEASEL = "teasel/teasel-output.pband";
  private static final String YARROW = "yarrow/yarrow-service.pband";
  private static final String SUNDEW = "sundew/sundew-energy.pband";

  private final Map<String, String> said = new TreeMap<>();

  private CleanProcedures() {}

  /**
   * What is said of each, by its name: those of the tests' and of the demo's library, two of them
   * for other analyzers, and some written otherwise, but no less right.
   */
  static Map<String, String> reports() {
    CleanProcedures all = new CleanProcedures();
    Map<String, String> library = Repository.texts(Repository.LIBRARY);
    Map<String, String> demo = Repository.texts(Repository.PROCEDURES);
    all.asTheyAre(library);
    all.asTheyAre(demo);
    all.retargeted(library, TEASEL, "gravel");
    all.retargeted(demo, "tussock-4/tussock-4-output.pband", "pumice-7");
    all.otherwise(library);
    return all.said;
  }

  private void asTheyAre(Map<String, String> files) {
    for (String main : procedures(files)) {
      said.put(main, Snippet.compile(files, main, null).report());
    }
  }

  private static List<String> procedures(Map<String, String> files) {
    List<String> mains = new ArrayList<>();
    files.forEach(
        (path, text) -> {
          if (text.contains("\nprocedure ")) {
            mains.add(path);
          }
        });
    return mains;
  }

  private void retargeted(Map<String, String> files, String main, String analyzer) {
    said.put(main + " for " + analyzer, FaultBench.retargeted(files, main, analyzer).report());
  }

  private void otherwise(Map<String, String> files) {
    changed(files, TEASEL, "decision simple", "decision simple\n  order by outlet");
    changed(files, TEASEL, "decision simple", "decision simple\n  phases before, after");
    changed(files, YARROW, "order    by outlet", "order    by test");
    changed(files, YARROW, "at most 50 uA", "at most 0.05 mA");
    changed(files, YARROW, "up from 10 ohm to 200 ohm", "down from 200 ohm to 10 ohm");
    changed(files, SUNDEW, "at most 2.1 kV", "at most 2100 V");
    changed(files, SUNDEW, "decision guarded", "decision guarded\n  phases as-found, as-left");
  }

  private void changed(Map<String, String> files, String main, String before, String after) {
    Map<String, String> others = new TreeMap<>(files);
    others.put(main, files.get(main).replace(before, after));
    String name = main + " with '" + after + "'";
    said.put(name, Snippet.compile(others, main, null).report());
  }
}
