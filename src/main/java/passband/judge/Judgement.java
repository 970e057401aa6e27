package passband.judge;

import java.util.List;

/**
 * A verdict on one point.
 *
 * @param phase empty where there is none
 * @param readings every attempt as written, the last judged
 * @param why what is to be said of it; empty for nothing
 * @param uncertainty the expanded uncertainty of the reading; NaN where none is known
 * @param conformity the probability that it conforms to the tolerance; NaN where none is known
 */
public record Judgement(
    PointLimit limit,
    String phase,
    List<String> readings,
    Verdict verdict,
    String why,
    double uncertainty,
    double conformity) {

  /** The point without its phase and quantity's phase: the same as found and as left. */
  String base() {
    return phase.isEmpty() ? limit.id() : limit.id().replace("/" + phase + "/", "/");
  }
}
