package passband.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import passband.model.Analyzer;
import passband.model.Instruments;
import passband.model.Series;
import passband.plan.Fact.Area;
import passband.quantity.Rational;
import passband.source.Span;
import passband.syntax.Amount;
import passband.syntax.Ratings;

/** What the profiles of the instruments say, and who takes which role. */
final class MeaningOfAnalyzer {
  private final FactList facts;
  private final MeaningOfProfiles profile;
  private final String prefix;
  private final String subject;

  MeaningOfAnalyzer(FactList facts, Predicate<String> drawn, String role) {
    boolean only = role.equals(Instruments.ONLY);
    this.facts = facts;
    this.profile = new MeaningOfProfiles(facts, Naming.OWN, Area.ANALYZER, drawn);
    this.prefix = only ? "" : role + "/";
    this.subject = only ? "the analyzer" : "the analyzer '" + role + "'";
  }

  static void add(Instruments instruments, FactList facts, Predicate<String> drawn, Span at) {
    for (Instruments.Taken one : instruments.roles()) {
      String role = one.role().text();
      if (!role.equals(one.unit().role())) {
        facts.add(
            Fact.text(
                Area.ANALYZER,
                role + "/analyzer",
                "the analyzer '" + role + "'",
                one.unit().role(),
                one.role().span()));
      }
    }
    for (Analyzer unit : instruments.units()) {
      new MeaningOfAnalyzer(facts, drawn, unit.role()).add(unit);
    }
    List<String> names = instruments.names();
    facts.add(Fact.order(Area.ORDER, "roles", "the order of the instruments", names, at));
  }

  /** Of one instrument. */
  void add(Analyzer analyzer) {
    Span at = analyzer.name().span();
    fact(
        prefix + "analyzer",
        subject,
        Canonical.of(analyzer.name(), analyzer.title()),
        FactText.titled(analyzer.title(), analyzer.name().text()),
        at);
    facts.add(
        Fact.rating(
            Area.DUTY,
            prefix + "settle",
            subject + "'s settling time",
            Canonical.of(analyzer.settle()),
            FactText.seconds(analyzer.settle()),
            analyzer.unknownSettle(),
            at));
    Amount reads = analyzer.tree().timing().reads();
    if (analyzer.reading() != null) {
      facts.add(
          Fact.of(
              Area.DUTY,
              prefix + "reads",
              subject + "'s time to read",
              Canonical.of(analyzer.reading()),
              FactText.seconds(analyzer.reading()),
              reads == null ? at : reads.span()));
    }
    profile.terminals(analyzer.role() + "/terminals", subject, analyzer.terminals(), at);
    loads(analyzer);
    MeaningOfMeasures measures = new MeaningOfMeasures(facts, Area.ANALYZER, prefix);
    analyzer.measures().forEach(measures::add);
    profile.actions(analyzer.role(), analyzer.actions());
    analyzer.settings().forEach(s -> profile.setting(analyzer.role(), s));
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

  /**
   * Loads, and the order of those that have a value in common: the first of them is the one that is
   * set to it.
   */
  private void loads(Analyzer analyzer) {
    List<String> order = new ArrayList<>();
    for (Analyzer.LoadBank load : analyzer.loads()) {
      String ends = load.from().id() + " to " + load.to().id();
      if (isShared(load, analyzer.loads())) {
        order.add(ends);
      }
      load(load, "load/" + ends, "load from " + ends);
    }
    if (!order.isEmpty()) {
      String key = prefix + "loads/chosen";
      Span at = analyzer.name().span();
      facts.add(
          Fact.order(Area.ANALYZER, key, "the loads that are set to a value first", order, at));
    }
  }

  private static boolean isShared(Analyzer.LoadBank load, List<Analyzer.LoadBank> loads) {
    for (Analyzer.LoadBank other : loads) {
      boolean ends = other.terminations().stream().anyMatch(load.terminations()::contains);
      if (other != load && (ends || meet(load.values(), other.values()))) {
        return true;
      }
    }
    return false;
  }

  /** Whether some value may be in both; spans with steps that miss each other count as meeting. */
  private static boolean meet(Series one, Series other) {
    for (Series.Segment a : one.segments()) {
      for (Series.Segment b : other.segments()) {
        boolean single = a.from().equals(a.to()) || b.from().equals(b.to());
        Series.Segment spanned = a.from().equals(a.to()) ? b : a;
        Rational value = a.from().equals(a.to()) ? a.from() : b.from();
        boolean apart = a.to().compareTo(b.from()) < 0 || b.to().compareTo(a.from()) < 0;
        if (single ? spanned.contains(value) : !apart) {
          return true;
        }
      }
    }
    return false;
  }

  private void load(Analyzer.LoadBank load, String key, String subject) {
    String name = load.name() == null ? "" : load.name();
    fact(key, subject, Canonical.of(load.name()), (subject + " " + name).strip(), load.span());
    profile.joins(key, subject, load.joins());
    fact(
        key + "/values",
        subject + ", values",
        MeaningOfProfiles.loads(load.values(), load.terminations()),
        FactText.loads(load.values(), load.terminations()),
        load.span());
    rating(
        key + "/error",
        subject + ", error",
        MeaningOfMeasures.accuracy(load.error()),
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
}
