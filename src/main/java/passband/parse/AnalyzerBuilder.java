package passband.parse;

import java.util.ArrayList;
import java.util.List;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.tree.TerminalNode;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.parse.antlr.PassbandParser.*;
import passband.syntax.Amount;
import passband.syntax.Ratings;
import passband.syntax.TerminalKind;
import passband.syntax.Tree;
import passband.syntax.Word;

/** From the contexts of an analyzer to its part of the tree. */
final class AnalyzerBuilder {
  private final Terminals leaves;
  private final ItemBuilder build;
  private final MeasureBuilder measures;

  AnalyzerBuilder(Terminals leaves, ItemBuilder build, Diagnostics diagnostics) {
    this.leaves = leaves;
    this.build = build;
    this.measures = new MeasureBuilder(leaves, diagnostics);
  }

  Tree.Analyzer analyzer(AnalyzerContext analyzer) {
    List<AnalyzerItemContext> items = analyzer.analyzerItem();
    SettleContext settle =
        build.single(
            build.parts(items, AnalyzerItemContext::settle, s -> s),
            "the settling time",
            leaves::line);
    ReadsContext reads =
        build.single(
            build.parts(items, AnalyzerItemContext::reads, r -> r),
            "the time to read",
            leaves::line);
    return new Tree.Analyzer(
        leaves.name(analyzer.analyzerHead().name()),
        leaves.optionalText(analyzer.analyzerHead().TEXT()),
        build.parts(items, AnalyzerItemContext::jack, this::jack),
        build.headed(
            items, AnalyzerItemContext::loadBank, LoadBankContext::loadHead, this::loadBank),
        build.headed(
            items, AnalyzerItemContext::measure, MeasureContext::measureHead, measures::measure),
        build.parts(items, AnalyzerItemContext::action, build::action),
        new Ratings.Timing(
            settle == null || settle.amount() == null ? null : leaves.amount(settle.amount()),
            settle == null ? null : unknown(settle.SETTLE(), settle.unknown(), settle),
            reads == null ? null : leaves.amount(reads.amount())),
        build.parts(items, AnalyzerItemContext::extraSetting, build::extraSetting),
        build.parts(items, AnalyzerItemContext::allow, build::allow),
        leaves.line(analyzer.analyzerHead()));
  }

  private Tree.Terminal jack(JackContext jack) {
    return new Tree.Terminal(
        jack.JACK() != null ? TerminalKind.JACK : TerminalKind.KEY,
        leaves.name(jack.name()),
        leaves.optionalText(jack.TEXT()),
        potential(jack.EARTH() == null ? jack.FLOATING() : jack.EARTH()),
        false,
        leaves.optionalBare(jack.NUMBER()),
        leaves.line(jack));
  }

  private Tree.@Nullable Ref potential(@Nullable TerminalNode node) {
    if (node == null) {
      return null;
    }
    Word word = leaves.word(node.getSymbol());
    return new Tree.Ref(List.of(word), word.span());
  }

  private Tree.LoadBank loadBank(LoadBankContext load) {
    LoadHeadContext head = load.loadHead();
    List<Tree.SeriesItem> values = new ArrayList<>();
    List<Word> terminations = new ArrayList<>();
    build
        .among(load.loadItem(), LoadValuesContext.class, LoadValuesContext::loadSeries)
        .forEach(
            series -> {
              values.addAll(leaves.resistances(series));
              terminations.addAll(leaves.terminations(series));
            });
    List<Ratings.Power> power = new ArrayList<>();
    List<Ratings.Unknown> unknown = new ArrayList<>();
    build
        .among(load.loadItem(), LoadPowerContext.class, p -> p)
        .forEach(
            p -> {
              power.addAll(build.each(p.powerRating(), this::rating));
              add(unknown, unknown(p.POWER(), p.unknown(), p));
            });
    LoadErrorContext error =
        build.single(
            build.among(load.loadItem(), LoadErrorContext.class, e -> e),
            "the load's error",
            leaves::line);
    if (error != null) {
      add(unknown, unknown(error.ERROR(), error.unknown(), error));
    }
    return new Tree.LoadBank(
        leaves.optionalName(head.name()),
        leaves.ref(head.ref(0)),
        leaves.ref(head.ref(1)),
        values,
        terminations,
        error == null || error.accuracy() == null ? null : leaves.accuracy(error.accuracy()),
        power,
        List.copyOf(unknown),
        build.among(
            load.loadItem(),
            LoadJoinContext.class,
            j -> new Tree.Join(leaves.ref(j.ref(0)), leaves.ref(j.ref(1)), leaves.line(j))),
        leaves.line(head));
  }

  private Ratings.@Nullable Unknown unknown(
      TerminalNode word, @Nullable UnknownContext unknown, ParserRuleContext line) {
    return leaves.unknown(leaves.word(word.getSymbol()), unknown, leaves.line(line));
  }

  private static void add(List<Ratings.Unknown> to, Ratings.@Nullable Unknown unknown) {
    if (unknown != null) {
      to.add(unknown);
    }
  }

  private Ratings.Power rating(PowerRatingContext rating) {
    Amount time = rating.CONTINUOUS() != null ? null : leaves.amount(rating.amount(1));
    return new Ratings.Power(leaves.amount(rating.amount(0)), time, leaves.span(rating));
  }
}
