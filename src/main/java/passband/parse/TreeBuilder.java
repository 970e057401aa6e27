package passband.parse;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.antlr.v4.runtime.ParserRuleContext;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.parse.antlr.PassbandParser.*;
import passband.sequence.Seq;
import passband.source.SourceFile;
import passband.syntax.Amount;
import passband.syntax.LimitExpression;
import passband.syntax.Step;
import passband.syntax.Tree;
import passband.syntax.Tree.TerminalKind;
import passband.syntax.Word;

/**
 * From the parser's contexts to the tree. What a fault left incomplete is left out; the fault has
 * been said.
 */
final class TreeBuilder {
  private final Terminals leaves;
  private final Diagnostics diagnostics;
  private final SourceFile source;

  /**
   * @param sound whether the parser found no fault, so that none need be looked for
   */
  TreeBuilder(SourceFile source, Diagnostics diagnostics, boolean sound) {
    this.source = source;
    this.diagnostics = diagnostics;
    this.leaves = new Terminals(source, diagnostics, sound);
  }

  Tree.File file(FileContext file) {
    List<Tree.Use> uses = each(file.use(), this::use);
    List<Tree.Declaration> declarations = new ArrayList<>();
    for (ParserRuleContext child : file.getRuleContexts(ParserRuleContext.class)) {
      Tree.Declaration declaration = declaration(child);
      if (declaration != null) {
        declarations.add(declaration);
      }
    }
    return new Tree.File(source, uses, declarations);
  }

  /** A use; null when its text is not closed, so that no such file is looked for. */
  private Tree.Use use(UseContext use) {
    String written = use.TEXT().getText();
    return written.length() > 1 && written.endsWith("\"")
        ? new Tree.Use(leaves.text(use.TEXT()))
        : null;
  }

  private Tree.Declaration declaration(ParserRuleContext context) {
    if (context instanceof DeviceContext device) {
      return leaves.whole(device.deviceHead()) ? device(device) : null;
    }
    if (context instanceof AnalyzerContext analyzer) {
      return leaves.whole(analyzer.analyzerHead()) ? analyzer(analyzer) : null;
    }
    if (context instanceof LeadsContext leadSet) {
      return leaves.whole(leadSet.leadsHead()) ? leadSet(leadSet) : null;
    }
    if (context instanceof Rule_Context rule) {
      return leaves.whole(rule.ruleHead()) ? rule(rule) : null;
    }
    if (context instanceof ProcedureContext procedure && leaves.whole(procedure.procedureHead())) {
      return procedure(procedure);
    }
    return null;
  }

  private <C extends ParserRuleContext, T> List<T> each(List<C> contexts, Function<C, T> make) {
    List<T> made = new ArrayList<>(contexts.size());
    for (C context : contexts) {
      if (leaves.whole(context)) {
        T one = make.apply(context);
        if (one != null) {
          made.add(one);
        }
      }
    }
    return made;
  }

  /** Items of one kind among lines of several. */
  private <C extends ParserRuleContext, T> List<T> among(
      List<? extends ParserRuleContext> lines, Class<C> kind, Function<C, T> make) {
    List<C> found = new ArrayList<>();
    for (ParserRuleContext line : lines) {
      if (kind.isInstance(line)) {
        found.add(kind.cast(line));
      }
    }
    return each(found, make);
  }

  /** The one item of its kind; a second is an error and is left out. */
  private <T> T single(List<T> items, String what, Function<T, passband.source.Span> span) {
    for (int i = 1; i < items.size(); i++) {
      diagnostics
          .say(Code.REPEATED_ITEM, span.apply(items.get(i)), "%s is given twice", what)
          .note(span.apply(items.get(0)), "first given here");
    }
    return items.isEmpty() ? null : items.get(0);
  }

  private <T> T firstOf(List<T> items) {
    return items.isEmpty() ? null : items.get(0);
  }

  private Tree.Allow allow(AllowContext allow) {
    ParserRuleContext block = allow.getParent().getParent();
    return new Tree.Allow(
        leaves.name(allow.name()),
        leaves.text(allow.TEXT()),
        leaves.line(allow),
        leaves.span(block));
  }

  private Tree.Action action(ActionContext action) {
    return new Tree.Action(
        leaves.name(action.name()), leaves.text(action.TEXT()), leaves.line(action));
  }

  private Tree.ExtraSetting extraSetting(ExtraSettingContext setting) {
    return new Tree.ExtraSetting(
        leaves.name(setting.name()),
        leaves.text(setting.TEXT()),
        setting.names() == null ? null : leaves.names(setting.names()),
        setting.series() == null ? null : leaves.series(setting.series()),
        leaves.line(setting));
  }

  // ---- device ----

  private Tree.Device device(DeviceContext device) {
    List<DeviceItemContext> items = device.deviceItem();
    List<Tree.Outlet> outlets = new ArrayList<>();
    List<Tree.Mode> modes = new ArrayList<>();
    List<Tree.State> states = new ArrayList<>();
    for (DeviceItemContext item : items) {
      if (item.outlet() != null && leaves.whole(item.outlet().outletHead())) {
        outlets.addAll(outlets(item.outlet()));
      } else if (item.mode_() != null && leaves.whole(item.mode_().modeHead())) {
        modes.add(mode(item.mode_()));
      } else if (item.state() != null && leaves.whole(item.state().stateHead())) {
        states.add(state(item.state()));
      }
    }
    return new Tree.Device(
        leaves.name(device.deviceHead().name()),
        leaves.text(device.deviceHead().TEXT()),
        outlets,
        modes,
        parts(items, DeviceItemContext::action, this::action),
        states,
        parts(items, DeviceItemContext::extraSetting, this::extraSetting),
        parts(items, DeviceItemContext::allow, this::allow),
        leaves.line(device.deviceHead()));
  }

  private <C, P extends ParserRuleContext, T> List<T> parts(
      List<C> items, Function<C, P> part, Function<P, T> make) {
    List<P> found = new ArrayList<>();
    for (C item : items) {
      P one = part.apply(item);
      if (one != null) {
        found.add(one);
      }
    }
    return each(found, make);
  }

  private List<Tree.Outlet> outlets(OutletContext outlet) {
    List<Tree.Terminal> terminals =
        among(
            outlet.outletItem(),
            TerminalContext.class,
            t ->
                new Tree.Terminal(
                    t.POLE() != null ? TerminalKind.POLE : TerminalKind.CONTACT,
                    leaves.name(t.name()),
                    leaves.text(t.TEXT()),
                    leaves.bare(t.NUMBER()),
                    leaves.line(t)));
    return each(
        outlet.outletHead().outletName(),
        name -> {
          List<NameContext> words = name.name();
          Word renamed = words.size() > 1 ? leaves.name(words.get(1)) : null;
          return new Tree.Outlet(
              leaves.name(words.get(0)),
              leaves.text(name.TEXT()),
              renamed,
              terminals,
              leaves.span(name));
        });
  }

  private Tree.Mode mode(Mode_Context mode) {
    ModeHeadContext head = mode.modeHead();
    List<ModeItemContext> items = mode.modeItem();
    ModeSettingContext setting =
        single(among(items, ModeSettingContext.class, s -> s), "the mode's setting", leaves::line);
    ModeLoadContext load =
        single(among(items, ModeLoadContext.class, s -> s), "the mode's load", leaves::line);
    return new Tree.Mode(
        leaves.name(head.name(0)),
        leaves.text(head.TEXT()),
        leaves.names(head.names()),
        head.THROUGH() == null ? null : leaves.name(head.name(1)),
        head.RENAMED() == null ? null : leaves.name(head.name(head.name().size() - 1)),
        setting == null ? null : leaves.name(setting.name()),
        setting == null ? List.of() : leaves.series(setting.series()),
        load == null ? List.of() : leaves.series(load.series()),
        single(
            among(
                items,
                ModeOutputContext.class,
                o ->
                    new Tree.QuantityLimit(
                        leaves.name(o.name()), limit(o.limit()), leaves.line(o))),
            "the mode's output",
            Tree.QuantityLimit::span),
        among(
            items,
            ModeLimitContext.class,
            l -> new Tree.QuantityLimit(leaves.name(l.name()), limit(l.limit()), leaves.line(l))),
        single(among(items, ModeDutyContext.class, this::duty), "the mode's duty", Tree.Duty::span),
        refs(items),
        among(items, ModeAllowContext.class, a -> allow(a.allow())),
        leaves.line(head));
  }

  private List<Tree.Ref> refs(List<ModeItemContext> items) {
    List<Tree.Ref> refs = new ArrayList<>();
    for (List<Tree.Ref> line :
        among(items, ModeActivateContext.class, a -> each(a.ref(), leaves::ref))) {
      refs.addAll(line);
    }
    return refs;
  }

  private Tree.Duty duty(ModeDutyContext duty) {
    return duty.CONTINUOUS() != null
        ? new Tree.Duty(null, null, leaves.line(duty))
        : new Tree.Duty(
            leaves.amount(duty.amount(0)), leaves.amount(duty.amount(1)), leaves.line(duty));
  }

  private Tree.State state(StateContext state) {
    Word enter = null;
    Word leave = null;
    for (StateTextContext text : among(state.stateItem(), StateTextContext.class, t -> t)) {
      if (text.ENTER() != null) {
        enter = leaves.text(text.TEXT());
      } else {
        leave = leaves.text(text.TEXT());
      }
    }
    return new Tree.State(
        leaves.name(state.stateHead().name()),
        leaves.text(state.stateHead().TEXT()),
        enter,
        leave,
        leaves.line(state.stateHead()));
  }

  // ---- analyzer and leads ----

  private Tree.Analyzer analyzer(AnalyzerContext analyzer) {
    List<AnalyzerItemContext> items = analyzer.analyzerItem();
    return new Tree.Analyzer(
        leaves.name(analyzer.analyzerHead().name()),
        leaves.text(analyzer.analyzerHead().TEXT()),
        parts(items, AnalyzerItemContext::jack, this::jack),
        headed(items, AnalyzerItemContext::loadBank, LoadBankContext::loadHead, this::loadBank),
        headed(items, AnalyzerItemContext::measure, MeasureContext::measureHead, this::measure),
        parts(items, AnalyzerItemContext::action, this::action),
        single(
            parts(items, AnalyzerItemContext::settle, s -> leaves.amount(s.amount())),
            "the settling time",
            Amount::span),
        parts(items, AnalyzerItemContext::extraSetting, this::extraSetting),
        parts(items, AnalyzerItemContext::allow, this::allow),
        leaves.line(analyzer.analyzerHead()));
  }

  /** Blocks whose head came through without a fault. */
  private <C, P extends ParserRuleContext, T> List<T> headed(
      List<C> items,
      Function<C, P> part,
      Function<P, ParserRuleContext> head,
      Function<P, T> make) {
    List<T> made = new ArrayList<>();
    for (C item : items) {
      P block = part.apply(item);
      if (block != null && leaves.whole(head.apply(block))) {
        made.add(make.apply(block));
      }
    }
    return made;
  }

  private Tree.Terminal jack(JackContext jack) {
    return new Tree.Terminal(
        jack.JACK() != null ? TerminalKind.JACK : TerminalKind.KEY,
        leaves.name(jack.name()),
        leaves.text(jack.TEXT()),
        leaves.bare(jack.NUMBER()),
        leaves.line(jack));
  }

  private Tree.LoadBank loadBank(LoadBankContext load) {
    LoadHeadContext head = load.loadHead();
    List<Tree.SeriesItem> values = new ArrayList<>();
    among(load.loadItem(), LoadValuesContext.class, v -> values.addAll(leaves.series(v.series())));
    List<Tree.PowerRating> power = new ArrayList<>();
    among(
        load.loadItem(),
        LoadPowerContext.class,
        p -> power.addAll(each(p.powerRating(), this::rating)));
    return new Tree.LoadBank(
        leaves.name(head.name()),
        leaves.ref(head.ref(0)),
        leaves.ref(head.ref(1)),
        values,
        firstOf(among(load.loadItem(), LoadErrorContext.class, e -> leaves.accuracy(e.accuracy()))),
        power,
        leaves.line(head));
  }

  private Tree.PowerRating rating(PowerRatingContext rating) {
    Amount time = rating.CONTINUOUS() != null ? null : leaves.amount(rating.amount(1));
    return new Tree.PowerRating(leaves.amount(rating.amount(0)), time, leaves.span(rating));
  }

  private Tree.Measure measure(MeasureContext measure) {
    MeasureHeadContext head = measure.measureHead();
    return new Tree.Measure(
        leaves.name(head.name()),
        head.FROM() == null ? null : leaves.ref(head.ref(0)),
        head.FROM() == null ? null : leaves.ref(head.ref(1)),
        new Ranges(leaves, diagnostics)
            .of(Seq.of(measure.measureItem()).filter(this::wholeRange).toList()),
        leaves.line(head));
  }

  private boolean wholeRange(MeasureItemContext item) {
    return item instanceof MeasureRangeContext range
        ? leaves.whole(range.rangeHead())
        : leaves.whole(item);
  }

  private Tree.Leads leadSet(LeadsContext leadSet) {
    List<LeadsItemContext> items = leadSet.leadsItem();
    return new Tree.Leads(
        leaves.name(leadSet.leadsHead().name()),
        leaves.text(leadSet.leadsHead().TEXT()),
        parts(items, LeadsItemContext::lead, this::lead),
        parts(items, LeadsItemContext::allow, this::allow),
        leaves.line(leadSet.leadsHead()));
  }

  private Tree.Lead lead(LeadContext lead) {
    Word colour = lead.COLOUR() == null ? null : leaves.name(lead.name(1));
    return new Tree.Lead(
        lead.LINK() != null,
        leaves.name(lead.name(0)),
        leaves.text(lead.TEXT()),
        lead.amount() == null ? null : leaves.amount(lead.amount()),
        colour,
        leaves.line(lead));
  }

  // ---- acceptance ----

  private Tree.Rule rule(Rule_Context rule) {
    return new Tree.Rule(
        leaves.name(rule.ruleHead().name()),
        leaves.text(rule.ruleHead().TEXT()),
        parts(rule.ruleItem(), RuleItemContext::accept, this::accept),
        parts(rule.ruleItem(), RuleItemContext::allow, this::allow),
        leaves.line(rule.ruleHead()));
  }

  private Tree.Accept accept(AcceptContext accept) {
    if (accept.BY() != null) {
      return new Tree.Accept(leaves.name(accept.name(0)), null, null, null, leaves.line(accept));
    }
    Word readAs = accept.READ() == null ? null : leaves.name(accept.name(1));
    return new Tree.Accept(
        null, leaves.name(accept.name(0)), limit(accept.limit()), readAs, leaves.line(accept));
  }

  private LimitExpression limit(LimitContext limit) {
    return new Limits(leaves).limit(limit);
  }

  // ---- procedure ----

  private Tree.Procedure procedure(ProcedureContext procedure) {
    List<ProcedureItemContext> items = procedure.procedureItem();
    List<Tree.Part> parts = new ArrayList<>();
    List<Tree.Setup> setups = new ArrayList<>();
    for (ProcedureItemContext item : items) {
      if (item instanceof ProcedureSectionContext c && leaves.whole(c.section().sectionHead())) {
        parts.add(section(c.section()));
      } else if (item instanceof ProcedureTestContext c && leaves.whole(c.test().testHead())) {
        parts.add(test(c.test()));
      } else if (item instanceof ProcedureAdjustContext c
          && leaves.whole(c.adjust().adjustHead())) {
        parts.add(adjust(c.adjust()));
      } else if (item instanceof ProcedureSetupContext c && leaves.whole(c.setup().setupHead())) {
        setups.add(setup(c.setup()));
      }
    }
    List<Word> leadSets = new ArrayList<>();
    among(items, ProcedureLeadsContext.class, l -> leadSets.addAll(leaves.names(l.names())));
    ProcedureOrderContext order =
        single(among(items, ProcedureOrderContext.class, o -> o), "the order", leaves::line);
    List<Word> phases =
        single(
            among(items, ProcedurePhasesContext.class, p -> leaves.names(p.names())),
            "the phases",
            l -> l.get(0).span());
    return new Tree.Procedure(
        leaves.name(procedure.procedureHead().name()),
        leaves.text(procedure.procedureHead().TEXT()),
        single(
            among(items, ProcedureRevisionContext.class, this::revision),
            "the revision",
            Tree.Revision::span),
        single(
            among(items, ProcedureDeviceContext.class, d -> leaves.name(d.name())),
            "the device",
            Word::span),
        single(
            among(items, ProcedureAnalyzerContext.class, d -> leaves.name(d.name())),
            "the analyzer",
            Word::span),
        leadSets,
        single(
            among(items, ProcedureDecisionContext.class, this::decision),
            "the decision rule",
            Tree.Decision::span),
        among(
            items,
            ProcedureCautionContext.class,
            c -> new Tree.Caution(leaves.name(c.name()), leaves.text(c.TEXT()), leaves.line(c))),
        phases == null ? List.of() : phases,
        order != null && order.OUTLET() != null,
        setups,
        parts,
        among(items, ProcedureAllowContext.class, a -> allow(a.allow())),
        leaves.line(procedure.procedureHead()));
  }

  private Tree.Revision revision(ProcedureRevisionContext r) {
    boolean replaces = r.REPLACES() != null;
    return new Tree.Revision(
        leaves.text(r.TEXT(0)),
        leaves.word(r.DATE(0).getSymbol()),
        replaces ? leaves.text(r.TEXT(1)) : null,
        r.DATE().size() > 1 ? leaves.word(r.DATE(1).getSymbol()) : null,
        replaces ? leaves.text(r.TEXT(2)) : null,
        leaves.line(r));
  }

  private Tree.Decision decision(ProcedureDecisionContext d) {
    int number = 0;
    Amount risk = d.RISK() == null ? null : leaves.bare(d.NUMBER(number++));
    Amount coverage = d.COVERAGE() == null ? null : leaves.bare(d.NUMBER(number));
    Tree.DecisionKind kind =
        d.RISK() != null
            ? Tree.DecisionKind.RISK
            : d.GUARDED() != null ? Tree.DecisionKind.GUARDED : Tree.DecisionKind.SIMPLE;
    return new Tree.Decision(kind, risk, coverage, leaves.line(d));
  }

  private Tree.Section section(SectionContext section) {
    SectionHeadContext head = section.sectionHead();
    return new Tree.Section(
        leaves.name(head.name()),
        leaves.text(head.TEXT()),
        steps(section.step()),
        leaves.line(head));
  }

  private Tree.Adjust adjust(AdjustContext adjust) {
    AdjustHeadContext head = adjust.adjustHead();
    return new Tree.Adjust(
        leaves.name(head.name()),
        leaves.text(head.TEXT()),
        leaves.names(head.names()),
        steps(adjust.step()),
        leaves.line(head));
  }

  private Tree.Setup setup(SetupContext setup) {
    SetupHeadContext head = setup.setupHead();
    return new Tree.Setup(
        leaves.name(head.name(0)),
        leaves.text(head.TEXT()),
        head.FOR() == null ? null : leaves.name(head.name(1)),
        among(
            setup.setupItem(),
            WireContext.class,
            w ->
                new Tree.Wire(
                    w.LINK() != null,
                    leaves.name(w.name()),
                    leaves.ref(w.ref(0)),
                    leaves.ref(w.ref(1)),
                    leaves.line(w))),
        among(setup.setupItem(), SetupAllowContext.class, a -> allow(a.allow())),
        leaves.line(head));
  }

  private Tree.Test test(TestContext test) {
    TestHeadContext head = test.testHead();
    List<TestItemContext> items = test.testItem();
    List<Word> outlets = new ArrayList<>();
    among(items, TestOutletsContext.class, o -> outlets.addAll(leaves.names(o.names())));
    return new Tree.Test(
        leaves.name(head.name(0)),
        leaves.text(head.TEXT()),
        head.RENAMED() == null ? null : leaves.name(head.name(1)),
        outlets,
        single(
            among(items, TestSetupContext.class, s -> leaves.name(s.name())),
            "the setup",
            Word::span),
        single(
            among(items, TestInsideContext.class, s -> leaves.ref(s.ref())),
            "the state",
            Tree.Ref::span),
        single(
            among(items, TestOnTimeContext.class, s -> leaves.amount(s.amount())),
            "the on-time",
            Amount::span),
        single(among(items, TestSweepContext.class, this::sweep), "the sweep", Tree.Sweep::span),
        among(items, TestDeriveContext.class, this::derive),
        among(items, TestAcceptContext.class, a -> accept(a.accept())),
        table(items),
        stepBlocks(items),
        among(items, TestAllowContext.class, a -> allow(a.allow())),
        leaves.line(head));
  }

  private Tree.Sweep sweep(TestSweepContext s) {
    return new Tree.Sweep(
        leaves.name(s.name(0)),
        s.UP() != null,
        leaves.amount(s.amount(0)),
        leaves.amount(s.amount(1)),
        leaves.amount(s.amount(2)),
        leaves.text(s.TEXT()),
        leaves.name(s.name(1)),
        leaves.line(s));
  }

  private Tree.Derive derive(TestDeriveContext d) {
    return new Tree.Derive(
        leaves.name(d.name()),
        leaves.text(d.TEXT()),
        new Limits(leaves).expression(d.expression()),
        leaves.amount(d.amount()),
        leaves.line(d));
  }

  private Tree.Table table(List<TestItemContext> items) {
    List<Tree.Table> tables = new ArrayList<>();
    for (TestItemContext item : items) {
      if (item instanceof TestTableFileContext file && leaves.whole(file)) {
        tables.add(
            new Tree.Table(leaves.text(file.TEXT()), List.of(), List.of(), leaves.line(file)));
      } else if (item instanceof TestTableContext table) {
        tables.add(new Tables(leaves).table(table, leaves.whole(table.header())));
      }
    }
    return single(tables, "the table", Tree.Table::span);
  }

  private List<Tree.Steps> stepBlocks(List<TestItemContext> items) {
    List<Tree.Steps> blocks = new ArrayList<>();
    for (TestItemContext item : items) {
      if (item instanceof TestStepsContext steps && leaves.whole(steps.stepsHead())) {
        StepsHeadContext head = steps.stepsHead();
        Tree.Steps.When when =
            head.BEFORE() != null
                ? Tree.Steps.When.BEFORE
                : head.AFTER() != null ? Tree.Steps.When.AFTER : Tree.Steps.When.EACH;
        blocks.add(
            new Tree.Steps(when, leaves.name(head.name()), steps(steps.step()), leaves.line(head)));
      }
    }
    return blocks;
  }

  private List<Step> steps(List<StepContext> steps) {
    return each(steps, this::step);
  }

  private Step step(StepContext step) {
    if (step instanceof StepDoContext s) {
      return new Step.Do(leaves.text(s.TEXT()), leaves.line(s));
    }
    if (step instanceof StepConfirmContext s) {
      return new Step.Confirm(
          s.name() == null ? null : leaves.name(s.name()), leaves.text(s.TEXT()), leaves.line(s));
    }
    if (step instanceof StepRecordContext s) {
      return new Step.Record(
          leaves.name(s.name()), leaves.text(s.TEXT()), leaves.unit(s.unit()), leaves.line(s));
    }
    if (step instanceof StepWaitContext s) {
      return new Step.Wait(leaves.amount(s.amount()), leaves.text(s.TEXT()), leaves.line(s));
    }
    if (step instanceof StepCautionContext s) {
      return new Step.Caution(leaves.name(s.name()), leaves.text(s.TEXT()), leaves.line(s));
    }
    if (step instanceof StepPerformContext s) {
      return new Step.Perform(leaves.ref(s.ref()).parts(), leaves.line(s));
    }
    return step instanceof StepChooseContext s ? choose(s) : null;
  }

  private Step choose(StepChooseContext choose) {
    List<Word> texts = new ArrayList<>();
    for (var text : choose.TEXT()) {
      texts.add(leaves.text(text));
    }
    int outcomes = choose.PASS() == null ? texts.size() : texts.size() - 1;
    return new Step.Choose(
        leaves.name(choose.name()),
        texts.get(0),
        List.copyOf(texts.subList(1, outcomes)),
        choose.PASS() == null ? null : texts.get(outcomes),
        leaves.line(choose));
  }
}
