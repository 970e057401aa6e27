package passband.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.model.Analyzer;
import passband.model.Device;
import passband.model.Lead;
import passband.syntax.Ratings;

/** The ratings of a procedure's bench that nobody knows, for the reviewer. */
public final class Unknowns {
  private final List<Unknowns.Line> lines = new ArrayList<>();

  private Unknowns() {}

  /**
   * One of them.
   *
   * @param rating the word of its line
   * @param place the declaration, a kind and a name
   */
  public record Line(String rating, String place, String reason) {}

  /** Those of the generator, the analyzer and the leads in use, in this order. */
  public static List<Line> of(Plan plan) {
    Unknowns unknowns = new Unknowns();
    for (Device.Mode mode : plan.device().modes()) {
      String place = "mode " + mode.name().text();
      List<Ratings.Unknown> own = new ArrayList<>(mode.tolerances().unknown());
      own.sort(Comparator.comparing(one -> one.rating().text()));
      own.forEach(one -> unknowns.add(one, place));
    }
    plan.instruments().units().forEach(unknowns::ofAnalyzer);
    unknowns.ofMeasures(plan.device().measures());
    for (Lead lead : plan.usedLeads()) {
      unknowns.add(lead.unknown(), lead.kind().word() + " " + lead.name().text());
    }
    return List.copyOf(unknowns.lines);
  }

  private void ofAnalyzer(Analyzer analyzer) {
    add(analyzer.unknownSettle(), "analyzer " + analyzer.name().text());
    for (Analyzer.LoadBank load : analyzer.loads()) {
      String place = "load from " + load.from().id() + " to " + load.to().id();
      add(load.unknownError(), place);
      add(load.unknownPower(), place);
    }
    ofMeasures(analyzer.measures());
  }

  private void ofMeasures(List<Analyzer.Measure> measures) {
    for (Analyzer.Measure measure : measures) {
      for (Analyzer.Range range : measure.ranges()) {
        String from = FactText.value(range.from(), range.unit());
        String to = FactText.value(range.to(), range.unit());
        add(range.unknown(), measure.quantity().name() + ", range " + from + " to " + to);
      }
    }
  }

  private void add(Ratings.@Nullable Unknown unknown, String place) {
    if (unknown != null) {
      lines.add(new Line(unknown.rating().text(), place, unknown.reason().text()));
    }
  }
}
