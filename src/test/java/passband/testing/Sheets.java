package passband.testing;

import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import passband.plan.Plan;

/** Procedures whose sheets the tests look at. */
public final class Sheets {
  private static final Pattern PROCEDURE = Pattern.compile("(?m)^procedure ");

  private Sheets() {}

  /** Simple acceptance: stated limits, a state, two outlets tested alike. */
  public static final Plan TEASEL = plan("teasel/teasel-output.pband");

  /** Guarded, in two phases: a load curve, a derived quantity, a sweep, leakage, an adjustment. */
  public static final Plan YARROW = plan("yarrow/yarrow-service.pband");

  /** An energy that is judged as it is set, by an analyzer with a setting of its own. */
  public static final Plan SUNDEW = plan("sundew/sundew-energy.pband");

  /** The second with points at which peak and RMS values have limits of their own. */
  public static final Plan WAVES = waves();

  private static final String REPEATED =
      """
        test carve-mean "Carve, mean" {
          outlet hand
          setup  hand-load
          accept power from output, read as voltage
          derive middle  = mean(current) over repeat, resolution 1 mA
          derive through = mean(voltage) / mean(current) over repeat, resolution 1 ohm
          accept middle  from 500 mA to 700 mA
          accept through from 200 ohm to 300 ohm
          table {
            mode  | setting/W | load/ohm | repeat
            carve | 90        | 250      | 1 to 4 step 1
          }
        }
      """
          .indent(2);

  /**
   * The second with instruments whose errors are not rectangular, and known only so well, and with
   * readings that are repeated.
   */
  public static final Plan SPREADS = spreads();

  private static Plan spreads() {
    Map<String, String> files = new HashMap<>(Repository.texts(Repository.LIBRARY));
    List<String> spreads =
        List.of(
            "triangular degrees-of-freedom 5",
            "u-shaped",
            "normal coverage 1.96 degrees-of-freedom 12.5");
    int[] next = {0};
    files.replaceAll(
        (name, text) ->
            !name.startsWith("analyzers/")
                ? text
                : Pattern.compile("(?m)^( +error +(?!unknown)[^\n]*)$")
                    .matcher(text)
                    .replaceAll(m -> m.group(1) + " as " + spreads.get(next[0]++ % 3)));
    files.computeIfPresent(
        "yarrow/yarrow-service.pband",
        (name, text) -> text.replaceFirst("(?m)^  test carve-output", REPEATED + "\n$0"));
    return Snippet.compile(files, "yarrow/yarrow-service.pband", null).plan();
  }

  private static Plan waves() {
    Map<String, String> files = new HashMap<>(Repository.texts(Repository.LIBRARY));
    String main = "yarrow/yarrow-service.pband";
    files.computeIfPresent(
        main,
        (name, text) ->
            text.replaceFirst(
                "(?m)^  test carve-output",
                """
                  test carve-wave "Carve, wave" {
                    outlet hand
                    setup  hand-load
                    accept peak-voltage at most 1450 V
                    accept voltage at most 200 V
                    accept power from output, read as current
                    table {
                      mode  | setting/W | load/ohm
                      carve | 90, 100   | 250
                    }
                  }

                $0"""
                    .indent(2)
                    .stripTrailing()));
    return Snippet.compile(files, main, null).plan();
  }

  private static Plan plan(String main) {
    return Snippet.compile(Repository.texts(Repository.LIBRARY), main, null).plan();
  }

  /** Every procedure of the demo library, whatever it holds today. */
  public static List<Plan> demo() {
    Map<String, String> files = Repository.texts(Repository.PROCEDURES);
    return files.keySet().stream()
        .filter(name -> PROCEDURE.matcher(files.get(name)).find())
        .map(main -> Snippet.compile(files, main, null).plan())
        .toList();
  }

  /** A table of this many points in one mode, on the manual's bench. */
  public static Plan ofPoints(int points) {
    String settings =
        IntStream.rangeClosed(1, points)
            .mapToObj(Integer::toString)
            .collect(Collectors.joining(", "));
    String text =
        Examples.framed(
            "test",
            """
              test long "Long" {
                outlet bip
                setup  bipolar
                accept power from output, read as current
                accept peak-voltage at most 250 V
                table {
                  mode | setting/W | load/ohm
                  thin | %s        | 100
                }
              }
            """
                .replace("%s", settings));
    return Examples.compile(text.getBytes(StandardCharsets.UTF_8)).plan();
  }
}
