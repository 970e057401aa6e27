package passband.testing;

import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import passband.plan.Plan;

/** Procedures whose sheets the tests look at. */
public final class Sheets {
  private Sheets() {}

  /** The procedures of the demo library, by name. */
  public static List<Plan> demo() {
    Map<String, String> files = new HashMap<>();
    Repository.files(Repository.PROCEDURES, "")
        .forEach(
            f ->
                files.put(
                    Repository.PROCEDURES.relativize(f).toString().replace('\\', '/'),
                    Repository.text(f)));
    return List.of("fescue-300/fescue-300-service.pband", "tussock-150/tussock-150-output.pband")
        .stream()
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
                  fine | %s        | 100
                }
              }
            """
                .replace("%s", settings));
    return Examples.compile(text.getBytes(StandardCharsets.UTF_8)).plan();
  }
}
