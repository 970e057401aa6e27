package passband.faults;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import passband.diagnostic.Diagnostic;
import passband.limit.Limit;
import passband.model.Device.Mode;
import passband.model.Series;
import passband.plan.Plan;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.plan.Stage;
import passband.source.Span;
import passband.testing.Repository;
import passband.testing.Snippet;

/**
 * Slips after which every reading passes and nobody sees why: each is made wherever it can be made
 * in every procedure of both libraries, and stops the build.
 */
class SilentSlipsTest {
  private record Place(Map<String, String> files, String main) {
    String text() {
      return files.get(main);
    }

    Plan plan() {
      return Snippet.compile(files, main, null).plan();
    }

    Snippet with(String text) {
      Map<String, String> changed = new TreeMap<>(files);
      changed.put(main, text);
      return Snippet.compile(changed, main, null);
    }
  }

  private static List<Place> procedures() {
    List<Place> all = new ArrayList<>();
    for (var root : List.of(Repository.LIBRARY, Repository.PROCEDURES)) {
      Map<String, String> files = Repository.texts(root);
      files.forEach(
          (path, text) -> {
            if (text.contains("\nprocedure ")) {
              all.add(new Place(files, path));
            }
          });
    }
    return all;
  }

  private static List<MatchResult> matches(String pattern, String text) {
    return Pattern.compile(pattern, Pattern.MULTILINE).matcher(text).results().toList();
  }

  private static String without(String text, MatchResult match) {
    return text.substring(0, match.start()) + text.substring(match.end());
  }

  private static boolean hasError(Snippet snippet, Set<String> codes) {
    return snippet.diagnostics().stream()
        .filter(Diagnostic::isError)
        .anyMatch(one -> codes.contains(one.code().id()));
  }

  /** No link between two halves of an electrode, on a line or in a cell, goes off in silence. */
  @Test
  void everyLinkIsMissed() {
    int tried = 0;
    for (Place place : procedures()) {
      List<MatchResult> links = new ArrayList<>();
      links.addAll(matches("^ +link .*half-[ab] +to .*half-[ab]\n", place.text()));
      links.addAll(matches("(?<=\\| )[^|\n]*half-[ab] to [^|\n]*half-[ab]$", place.text()));
      for (MatchResult link : links) {
        Snippet found = place.with(without(place.text(), link));
        assertTrue(hasError(found, CIRCUIT), place.main() + ": " + link.group() + found.report());
        tried++;
      }
    }
    assertTrue(tried >= 8, tried + " links");
  }

  private static final Set<String> CIRCUIT =
      Set.of("poles-not-joined", "pole-unwired", "circuit-open", "return-missing", "unused-name");

  /** Where only an upper limit is read, no step that brings the reading about becomes words. */
  @Test
  void noStepBecomesWordsWhereZeroPasses() {
    int tried = 0;
    for (Place place : procedures()) {
      for (Stage.Run run : place.plan().runs()) {
        String head = "^ +test " + run.test().text() + " .*\\{\n";
        List<MatchResult> heads = onlyUpper(run) ? matches(head, place.text()) : List.of();
        for (String step : heads.isEmpty() ? List.<String>of() : stepsOf(run.points().get(0))) {
          String words =
              "each replacing " + step + " {\n do \"See to {" + SLOTS.get(step) + "}.\"\n}\n";
          Snippet found =
              place.with(inserted(place.text(), heads.get(0).end(), words.replace("{}", "it")));
          assertTrue(hasError(found, Set.of("step-emptied")), head + step + found.report());
          tried++;
        }
      }
    }
    assertTrue(tried >= 10, tried + " steps");
  }

  private static final Map<String, String> SLOTS =
      Map.of("select", "mode", "adjust", "setting", "set-load", "load", "start", "");

  private static Set<String> stepsOf(Point point) {
    Set<String> names = new TreeSet<>();
    for (PlanStep step : point.steps()) {
      String name = step.kind().word();
      if (SLOTS.containsKey(name) && step.words() != null) {
        names.add(name);
      }
    }
    return names;
  }

  private static String inserted(String text, int at, String more) {
    return text.substring(0, at) + more + text.substring(at);
  }

  private static String replaced(String text, Span span, String other) {
    return text.substring(0, span.start()) + other + text.substring(span.end());
  }

  /** Leakage read at the lowest setting of a mode, and nowhere else in that setup. */
  @Test
  void leakageAtTheLowestSettingIsMissed() {
    int tried = 0;
    for (Place place : procedures()) {
      Set<Integer> done = new TreeSet<>();
      for (Point point : place.plan().points()) {
        boolean hf = point.limits().stream().anyMatch(one -> one.quantity().equals("hf-leakage"));
        Span cell = point.places().setting();
        if (!hf || point.mode() == null || !done.add(cell.start())) {
          continue;
        }
        Series series = point.mode().setting();
        String lowest = series.lowest().over(series.unit().factor()).toPlain();
        Snippet found = place.with(replaced(place.text(), cell, lowest));
        assertTrue(hasError(found, Set.of("leakage-below-highest")), point.id() + found.report());
        tried++;
      }
    }
    assertTrue(tried >= 8, tried + " rows");
  }

  /** A mode whose peak is below that of a sine of its power, and above its RMS value. */
  @Test
  void aPeakBelowThatOfASineIsMissed() {
    int tried = 0;
    for (Place place : procedures()) {
      for (Mode mode : place.plan().device().modes()) {
        for (var line : mode.limits()) {
          Map<String, String> changed = new TreeMap<>(place.files());
          double sine = sine(mode);
          if (line.quantity().text().equals("peak-voltage") && sine > 0) {
            String file = line.span().file().path();
            String peak = "peak-voltage at most " + (int) Math.floor(sine * 0.9) + " V";
            changed.put(file, replaced(changed.get(file), line.span(), peak));
            Snippet found = Snippet.compile(changed, place.main(), null);
            assertTrue(hasError(found, Set.of("peak-below-sine")), peak + found.report());
            tried++;
          }
        }
      }
    }
    assertTrue(tried >= 15, tried + " modes");
  }

  /** The square root of 2·P·R; zero for a mode that is not set as a power. */
  private static double sine(Mode mode) {
    return mode.settingKind() != null && mode.settingKind().name().equals("power")
        ? Math.sqrt(
            2 * mode.setting().highest().doubleValue() * mode.loads().lowest().doubleValue())
        : 0;
  }

  private static boolean onlyUpper(Stage.Run run) {
    for (Point point : run.points()) {
      for (Limit limit : point.limits()) {
        if (limit.accept().lower() != null && limit.accept().lower().signum() > 0) {
          return false;
        }
      }
    }
    return run.points().stream().anyMatch(point -> !point.limits().isEmpty());
  }
}
