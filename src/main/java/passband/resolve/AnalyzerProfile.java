package passband.resolve;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.model.Accuracy;
import passband.model.Analyzer;
import passband.model.Analyzer.LoadBank;
import passband.model.Analyzer.Measure;
import passband.model.Analyzer.PowerRating;
import passband.model.Instruments;
import passband.model.Join;
import passband.model.Series;
import passband.model.Terminal;
import passband.model.Termination;
import passband.quantity.Dimension;
import passband.quantity.Rational;
import passband.syntax.Ratings;
import passband.syntax.Tree;

/** Takes an analyzer declaration for what it means. */
final class AnalyzerProfile {
  private final Names names;
  private final Diagnostics diagnostics;
  private final Values values;

  AnalyzerProfile(Names names, Diagnostics diagnostics, Values values) {
    this.names = names;
    this.diagnostics = diagnostics;
    this.values = values;
  }

  Analyzer analyzer(Tree.Analyzer tree) {
    Profiles.nameSettings(tree.actions(), tree.settings(), names);
    Profiles.requirePlaceholders(
        tree.actions(), tree.settings(), Map.of("set-load", "load"), diagnostics);
    List<Terminal> terminals = terminals(tree);
    MeasureProfile profile = new MeasureProfile(terminals, names, diagnostics, values);
    List<LoadBank> loads = new ArrayList<>();
    tree.loads().forEach(l -> add(loads, load(l, profile)));
    List<Measure> measures = profile.measures(tree.measures());
    settles(tree);
    ForgottenAction.look(tree.name(), tree.actions(), steps(tree), diagnostics);
    return new Analyzer(
        Instruments.ONLY,
        tree.name(),
        Profiles.titleOf(tree.title(), tree.name()),
        terminals,
        List.copyOf(loads),
        measures,
        Profiles.actions(tree.actions(), diagnostics),
        new Analyzer.Timing(
            tree.timing().settle() == null
                ? null
                : values.positive(tree.timing().settle(), Dimension.TIME, "the settling time"),
            tree.timing().unknownSettle(),
            reading(tree)),
        Profiles.settings(tree.settings(), diagnostics, values),
        tree);
  }

  private static <T> void add(List<T> list, @Nullable T thing) {
    if (thing != null) {
      list.add(thing);
    }
  }

  private List<Terminal> terminals(Tree.Analyzer tree) {
    Scope.distinct(diagnostics, "terminal", tree.terminals(), Tree.Terminal::name);
    String title = Profiles.titleOf(tree.title(), tree.name());
    List<Terminal> terminals = new ArrayList<>();
    for (Tree.Terminal t : tree.terminals()) {
      String printed = Profiles.titleOf(t.title(), t.name());
      terminals.add(
          new Terminal(
              t.kind(),
              Instruments.ONLY,
              title,
              t.name(),
              printed,
              Profiles.holds(t.holds(), values),
              t.on() == null ? null : t.on().parts().get(0).text(),
              false));
    }
    Profiles.printedNames(diagnostics, "terminals", terminals);
    return List.copyOf(terminals);
  }

  private @Nullable LoadBank load(Tree.LoadBank load, MeasureProfile profile) {
    Terminal from = profile.terminal(load.from());
    Terminal to = profile.terminal(load.to());
    if (load.values().isEmpty()) {
      diagnostics.say(Code.MISSING_ITEM, load.span(), "this load has no 'values' line");
    }
    Series series = values.series(load.values(), Dimension.RESISTANCE, "a load");
    boolean known = isRated(load);
    Accuracy error =
        load.error() == null ? null : values.accuracy(load.error(), Dimension.RESISTANCE, null);
    List<Join> joins = Joins.of(load.joins(), profile::terminal, diagnostics);
    if (from == null
        || to == null
        || series == null
        || !known
        || (load.error() != null && error == null)) {
      return null;
    }
    String name = load.name() == null ? null : load.name().text();
    return new LoadBank(
        name,
        from,
        to,
        series,
        Termination.of(load.terminations()),
        error,
        ratings(load),
        Ratings.Unknown.find(load.unknown(), "error"),
        Ratings.Unknown.find(load.unknown(), "power"),
        joins,
        load.span());
  }

  /** A load without its error and its power would take anything, exactly. */
  private boolean isRated(Tree.LoadBank load) {
    return new RequiredRatings("this load", load.span(), load.unknown(), diagnostics)
        .need("error", "error", load.error() != null)
        .need("power", "power rating", !load.power().isEmpty())
        .areGiven();
  }

  /** The steps that a point has at the instrument. */
  private static List<String> steps(Tree.Analyzer tree) {
    List<String> steps = new ArrayList<>();
    for (Tree.LoadBank load : tree.loads()) {
      boolean several =
          load.values().size() + load.terminations().size() > 1
              || (load.values().size() == 1 && load.values().get(0).to() != null);
      if (several && steps.isEmpty()) {
        steps.add("set-load");
      }
    }
    if (!tree.measures().isEmpty()) {
      steps.addAll(List.of("start", "read", "stop"));
    }
    return steps;
  }

  /** Less is no time for a person to read a display in: common practice, no source. */
  private static final Rational SHORTEST = Rational.of(1, 10);

  /** What measures nothing has no reading that must settle. */
  private void settles(Tree.Analyzer tree) {
    Ratings.Unknown why = tree.timing().unknownSettle();
    List<Ratings.Unknown> unknown = why == null ? List.of() : List.of(why);
    String what = "the analyzer '" + tree.name().text() + "'";
    new RequiredRatings(what, tree.name().span(), unknown, diagnostics)
        .need(
            "settle", "settling time", tree.timing().settle() != null || tree.measures().isEmpty())
        .areGiven();
    Rational time =
        tree.timing().settle() == null
            ? null
            : new Values(new Diagnostics()).si(tree.timing().settle());
    if (time != null && tree.timing().settle() != null && time.compareTo(SHORTEST) < 0) {
      diagnostics
          .say(
              Code.PREFIX_SLIP,
              tree.timing().settle().span(),
              "nobody reads a display after %s s: is the unit right?",
              time.toPlain())
          .hint("the settling time is how long output is on before a reading is taken");
    }
  }

  /** How long a reading takes; null where nothing says, or where it does not count. */
  private @Nullable Rational reading(Tree.Analyzer tree) {
    if (tree.timing().reads() == null) {
      return null;
    }
    Tree.@Nullable Action hold = null;
    for (Tree.Action action : tree.actions()) {
      hold = action.name().text().equals("hold") ? action : hold;
    }
    if (hold != null || tree.measures().isEmpty()) {
      DiagnosticBuilder said =
          diagnostics.say(
              Code.WRONG_KIND,
              tree.timing().reads().span(),
              hold == null
                  ? "'%s' measures nothing, so nothing is read there"
                  : "'%s' holds its readings: they are written down with output off, in any time",
              tree.name().text());
      if (hold != null) {
        said.note(hold.name().span(), "it holds them by this");
      }
      said.hint("remove this line");
    }
    return values.positive(tree.timing().reads(), Dimension.TIME, "the time to read");
  }

  private List<PowerRating> ratings(Tree.LoadBank load) {
    List<PowerRating> ratings = new ArrayList<>();
    Map<PowerRating, Ratings.Power> written = new LinkedHashMap<>();
    for (Ratings.Power rating : load.power()) {
      Rational power =
          new Plausible(diagnostics)
              .load(
                  rating.power(),
                  values.positive(rating.power(), Dimension.POWER, "a load's power"));
      Rational time =
          rating.time() == null ? null : values.positive(rating.time(), Dimension.TIME, "the time");
      if (power != null && (rating.time() == null || time != null)) {
        PowerRating one = new PowerRating(power, time);
        ratings.add(one);
        falls(rating, one, written);
        written.put(one, rating);
      }
    }
    boolean continuous = load.power().isEmpty();
    for (Ratings.Power rating : load.power()) {
      continuous |= rating.time() == null;
    }
    if (!continuous) {
      diagnostics.say(
          Code.MISSING_ITEM,
          load.power().get(0).span(),
          "this load has no continuous rating, by which it cools between two points");
    }
    ratings.sort((one, other) -> one.power().compareTo(other.power()));
    return List.copyOf(ratings);
  }

  /**
   * What a load takes for longer it takes for a shorter time too: the power falls with the time.
   */
  private void falls(
      Ratings.Power tree, PowerRating rating, Map<PowerRating, Ratings.Power> before) {
    before.forEach(
        (other, otherTree) -> {
          int time = compareTimes(rating.time(), other.time());
          int power = rating.power().compareTo(other.power());
          if (time == 0 || power * time > 0) {
            diagnostics
                .say(
                    Code.LOAD_POWER_RISES,
                    tree.span(),
                    time == 0
                        ? "this load already has a rating for that time"
                        : "this load would take more power for a longer time than for a shorter one")
                .note(otherTree.span(), "the other rating is here");
          }
        });
  }

  private static int compareTimes(@Nullable Rational one, @Nullable Rational other) {
    if (one == null || other == null) {
      return Boolean.compare(one == null, other == null);
    }
    return one.compareTo(other);
  }
}
