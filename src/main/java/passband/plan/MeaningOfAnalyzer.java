package passband.plan;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.model.Accuracy;
import passband.model.Analyzer;
import passband.plan.Fact.Area;
import passband.source.Span;
import passband.syntax.Ratings;

/** What the analyzer's profile says. */
final class MeaningOfAnalyzer {
  private final FactList facts;
  private final MeaningOfProfiles profile;

  MeaningOfAnalyzer(FactList facts) {
    this.facts = facts;
    this.profile = new MeaningOfProfiles(facts, Naming.OWN, Area.ANALYZER);
  }

  void add(Analyzer analyzer) {
    Span at = analyzer.name().span();
    fact(
        "analyzer",
        "the analyzer",
        Canonical.of(analyzer.name(), analyzer.title()),
        FactText.titled(analyzer.title(), analyzer.name().text()),
        at);
    facts.add(
        Fact.rating(
            Area.DUTY,
            "settle",
            "the analyzer's settling time",
            Canonical.of(analyzer.settle()),
            FactText.seconds(analyzer.settle()),
            analyzer.unknownSettle(),
            at));
    profile.terminals("analyzer/terminals", "the analyzer", analyzer.terminals(), at);
    loads(analyzer);
    analyzer.measures().forEach(this::measure);
    profile.actions("analyzer", analyzer.actions());
    analyzer.settings().forEach(s -> profile.setting("analyzer", s));
  }

  private void fact(String key, String subject, String canonical, String shown, Span span) {
    facts.add(Fact.of(Area.ANALYZER, key, subject, canonical, shown, span));
  }

  private void rating(
      String key,
      String subject,
      String canonical,
      String shown,
      Ratings.@Nullable Unknown unknown,
      Span span) {
    facts.add(Fact.rating(Area.ANALYZER, key, subject, canonical, shown, unknown, span));
  }

  // ---- loads ----

  /** Loads, and their order: the first that has a value is the one that is set to it. */
  private void loads(Analyzer analyzer) {
    List<String> order = new ArrayList<>();
    for (Analyzer.LoadBank load : analyzer.loads()) {
      String ends = load.from().id() + " to " + load.to().id();
      order.add(ends);
      load(load, "load/" + ends, "load from " + ends);
    }
    facts.add(
        Fact.order(
            Area.ANALYZER, "loads", "the order of the loads", order, analyzer.name().span()));
  }

  private void load(Analyzer.LoadBank load, String key, String subject) {
    String name = load.name() == null ? "" : load.name();
    fact(key, subject, Canonical.of(load.name()), (subject + " " + name).strip(), load.span());
    fact(
        key + "/values",
        subject + ", values",
        MeaningOfProfiles.loads(load.values(), load.terminations()),
        FactText.loads(load.values(), load.terminations()),
        load.span());
    rating(
        key + "/error",
        subject + ", error",
        accuracy(load.error()),
        FactText.accuracy(load.error()),
        load.unknownError(),
        load.span());
    List<String> ratings = new ArrayList<>();
    List<String> shown = new ArrayList<>();
    for (Analyzer.PowerRating rating : load.power()) {
      ratings.add(Canonical.of(rating.power(), rating.time()));
      shown.add(rating.power().toPlain() + " W for " + FactText.seconds(rating.time()));
    }
    rating(
        key + "/power",
        subject + ", power",
        Canonical.of(ratings),
        String.join(", ", shown),
        load.unknownPower(),
        load.span());
  }

  private static String accuracy(@Nullable Accuracy accuracy) {
    return accuracy == null
        ? Canonical.of((Object) null)
        : Canonical.of(accuracy.relative(), accuracy.absolute());
  }

  // ---- measured quantities ----

  private void measure(Analyzer.Measure measure) {
    String key = "measure/" + measure.quantity().name();
    String subject = "measured " + measure.quantity().name();
    String from = measure.from() == null ? null : measure.from().id();
    String to = measure.to() == null ? null : measure.to().id();
    String shown = from == null && to == null ? "" : from + " to " + to;
    fact(key, subject, Canonical.of(from, to), shown, measure.span());
    int number = 1;
    for (Analyzer.Range range : measure.ranges()) {
      range(range, key + "/" + number, subject + ", range " + number);
      number++;
    }
  }

  private void range(Analyzer.Range r, String key, String subject) {
    String shown =
        FactText.value(r.from(), r.unit())
            + " to "
            + FactText.value(r.to(), r.unit())
            + ", resolution "
            + FactText.value(r.resolution(), r.unit())
            + ", error "
            + FactText.known(FactText.accuracy(r.error()), r.unknown());
    String canonical =
        Canonical.of(r.from(), r.to(), r.resolution(), r.unit(), accuracy(r.error()));
    if (r.unknown() == null) {
      fact(key, subject, canonical, shown, r.span());
    } else {
      String why = Canonical.of(canonical, r.unknown().reason());
      facts.add(Fact.of(Area.UNKNOWN, key, subject, why, shown, r.unknown().span()));
    }
  }
}
