package passband.parse;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.parse.antlr.PassbandParser.*;
import passband.source.Span;
import passband.syntax.Adjust;
import passband.syntax.DecisionKind;
import passband.syntax.Gate;
import passband.syntax.Heading;
import passband.syntax.Include;
import passband.syntax.OnlyWhen;
import passband.syntax.SharedPart;
import passband.syntax.Tree;
import passband.syntax.Word;

/** From the contexts of a procedure to its part of the tree, its tests apart. */
final class ProcedureBuilder {
  private final Terminals leaves;
  private final ItemBuilder build;
  private final StepBuilder steps;
  private final TestBuilder tests;
  private final SetupBuilder wiring;
  private final Diagnostics diagnostics;

  ProcedureBuilder(Terminals leaves, ItemBuilder build, Diagnostics diagnostics) {
    this.leaves = leaves;
    this.diagnostics = diagnostics;
    this.build = build;
    this.steps = new StepBuilder(leaves, build);
    this.wiring = new SetupBuilder(leaves, build, diagnostics);
    this.tests = new TestBuilder(leaves, build, diagnostics);
  }

  Tree.Procedure procedure(ProcedureContext procedure) {
    ProcedureHeadContext head = procedure.procedureHead();
    return lines(
        leaves.name(head.name()),
        leaves.optionalText(head.TEXT()),
        procedure.procedureItem(),
        leaves.line(head));
  }

  SharedPart part(SharedPartContext part) {
    SharedPartHeadContext head = part.sharedPartHead();
    return new SharedPart(
        lines(leaves.name(head.name()), null, part.procedureItem(), leaves.line(head)),
        leaves.span(part));
  }

  private Tree.Procedure lines(
      Word name, @Nullable Word title, List<ProcedureItemContext> items, Span head) {
    List<Tree.Part> parts = new ArrayList<>();
    List<Tree.Setup> setups = new ArrayList<>();
    for (ProcedureItemContext item : items) {
      if (item instanceof ProcedureSectionContext c && leaves.whole(c.section().sectionHead())) {
        parts.add(section(c.section()));
      } else if (item instanceof ProcedureGateContext c && leaves.whole(c)) {
        parts.add(new Gate(leaves.name(c.name()), leaves.text(c.TEXT()), leaves.line(c)));
      } else if (item instanceof ProcedureIncludeContext c && leaves.whole(c)) {
        leaves.names(c.names()).forEach(one -> parts.add(new Include(one, leaves.line(c))));
      } else if (item instanceof ProcedureTestContext c && leaves.whole(c.test().testHead())) {
        parts.add(tests.test(c.test()));
      } else if (item instanceof ProcedureTestsContext c) {
        parts.addAll(new TestGroups(leaves, build, tests, diagnostics).tests(c.testGroup()));
      } else if (item instanceof ProcedureAdjustContext c
          && leaves.whole(c.adjust().adjustHead())) {
        parts.add(adjust(c.adjust()));
      } else if (item instanceof ProcedureSetupContext c && leaves.whole(c.setup().setupHead())) {
        setups.add(wiring.setup(c.setup()));
      } else if (item instanceof ProcedureSetupsContext c) {
        setups.addAll(wiring.setups(c.setupGroup()));
      }
    }
    return new Tree.Procedure(
        name,
        title,
        build.single(
            build.among(items, ProcedureRevisionContext.class, this::revision),
            "the revision",
            Heading.Revision::span),
        bench(items),
        build.single(
            build.among(items, ProcedureDecisionContext.class, this::decision),
            "the decision rule",
            Heading.Decision::span),
        build.among(
            items,
            ProcedureCautionContext.class,
            c -> new Heading.Caution(leaves.name(c.name()), leaves.text(c.TEXT()), leaves.line(c))),
        order(items),
        setups,
        parts,
        build.among(items, ProcedureAllowContext.class, a -> build.allow(a.allow())),
        head);
  }

  private Tree.Bench bench(List<ProcedureItemContext> items) {
    List<Word> leads = new ArrayList<>();
    build.among(items, ProcedureLeadsContext.class, l -> leads.addAll(leaves.names(l.names())));
    return new Tree.Bench(
        build.single(
            build.among(items, ProcedureDeviceContext.class, d -> leaves.name(d.name())),
            "the device",
            Word::span),
        build.among(items, ProcedureAnalyzerContext.class, this::instrument),
        leads);
  }

  private Tree.Instrument instrument(ProcedureAnalyzerContext line) {
    int last = line.name().size() - 1;
    Word role = last == 0 ? null : leaves.name(line.name(0));
    return new Tree.Instrument(role, leaves.name(line.name(last)), leaves.line(line));
  }

  private Heading.Order order(List<ProcedureItemContext> items) {
    ProcedureOrderContext order =
        build.single(
            build.among(items, ProcedureOrderContext.class, o -> o), "the order", leaves::line);
    List<Word> phases =
        build.single(
            build.among(items, ProcedurePhasesContext.class, p -> leaves.names(p.names())),
            "the phases",
            l -> l.get(0).span());
    return new Heading.Order(
        phases == null ? List.of() : phases,
        order == null || order.OUTLET() != null,
        build.single(
            build.among(items, ProcedureLanguageContext.class, l -> leaves.name(l.name())),
            "the language",
            Word::span));
  }

  private Heading.Revision revision(ProcedureRevisionContext r) {
    boolean replaces = r.REPLACES() != null;
    return new Heading.Revision(
        leaves.text(r.TEXT(0)),
        leaves.word(r.DATE(0).getSymbol()),
        replaces ? leaves.text(r.TEXT(1)) : null,
        r.DATE().size() > 1 ? leaves.word(r.DATE(1).getSymbol()) : null,
        replaces ? leaves.text(r.TEXT(2)) : null,
        leaves.line(r));
  }

  private Heading.Decision decision(ProcedureDecisionContext d) {
    DecisionKind kind =
        d.RISK() != null
            ? DecisionKind.RISK
            : d.MANAGED() != null
                ? DecisionKind.MANAGED
                : d.GUARDED() != null ? DecisionKind.GUARDED : DecisionKind.SIMPLE;
    return new Heading.Decision(
        kind,
        leaves.factor(d.risk),
        leaves.factor(d.factor),
        leaves.factor(d.prior),
        leaves.line(d));
  }

  private Tree.Section section(SectionContext section) {
    SectionHeadContext head = section.sectionHead();
    return new Tree.Section(
        leaves.name(head.name()),
        leaves.optionalText(head.TEXT()),
        build.single(build.each(section.when_(), build::when), "the condition", OnlyWhen::span),
        steps.steps(section.step()),
        leaves.line(head));
  }

  private Adjust adjust(AdjustContext adjust) {
    AdjustHeadContext head = adjust.adjustHead();
    return new Adjust(
        leaves.name(head.name()),
        leaves.optionalText(head.TEXT()),
        leaves.names(head.names()),
        steps.steps(adjust.step()),
        leaves.line(head));
  }
}
