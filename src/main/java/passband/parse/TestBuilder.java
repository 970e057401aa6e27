package passband.parse;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.parse.antlr.PassbandParser.*;
import passband.syntax.Amount;
import passband.syntax.Conditions;
import passband.syntax.OnlyWhen;
import passband.syntax.Tree;
import passband.syntax.Word;

/** From the contexts of a test to its part of the tree. */
final class TestBuilder {
  private final Terminals leaves;
  private final ItemBuilder build;
  private final StepBuilder steps;
  private final Diagnostics diagnostics;

  TestBuilder(Terminals leaves, ItemBuilder build, Diagnostics diagnostics) {
    this.leaves = leaves;
    this.diagnostics = diagnostics;
    this.build = build;
    this.steps = new StepBuilder(leaves, build);
  }

  Tree.Test test(TestContext test) {
    TestHeadContext head = test.testHead();
    List<TestItemContext> items = test.testItem();
    return new Tree.Test(
        leaves.name(head.name(0)),
        leaves.optionalText(head.TEXT()),
        head.RENAMED() == null ? null : leaves.name(head.name(1)),
        conditions(items),
        build.single(
            build.among(items, TestSweepContext.class, this::sweep), "the sweep", Tree.Sweep::span),
        build.among(items, TestDeriveContext.class, d -> build.derive(d.derive_())),
        accepts(items),
        table(items),
        stepBlocks(items),
        build.among(items, TestAllowContext.class, a -> build.allow(a.allow())),
        leaves.line(head));
  }

  List<Tree.Accept> accepts(List<TestItemContext> items) {
    List<Tree.Accept> accepts = new ArrayList<>();
    build
        .among(items, TestAcceptContext.class, a -> build.accept(a.accept()))
        .forEach(accepts::addAll);
    return accepts;
  }

  Conditions conditions(List<TestItemContext> items) {
    List<Word> outlets = new ArrayList<>();
    build.among(items, TestOutletsContext.class, o -> outlets.addAll(leaves.names(o.names())));
    return new Conditions(
        outlets,
        build.single(
            build.among(items, TestSetupContext.class, s -> leaves.name(s.name())),
            "the setup",
            Word::span),
        build.single(
            build.among(items, TestInsideContext.class, s -> leaves.ref(s.ref())),
            "the state",
            Tree.Ref::span),
        build.single(
            build.among(items, TestWhenContext.class, w -> build.when(w.when_())),
            "the condition",
            OnlyWhen::span),
        build.single(
            build.among(items, TestOutputContext.class, this::output), "the output", Word::span),
        build.single(
            build.among(items, TestOnTimeContext.class, s -> leaves.amount(s.amount())),
            "the on-time",
            Amount::span),
        null);
  }

  private Word output(TestOutputContext output) {
    boolean off = output.OFF() != null;
    return new Word(off ? "off" : "inhibited", leaves.line(output));
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

  private Tree.@Nullable Table table(List<TestItemContext> items) {
    List<Tree.Table> tables = new ArrayList<>();
    for (TestItemContext item : items) {
      if (item instanceof TestTableFileContext file && leaves.whole(file)) {
        tables.add(
            new Tree.Table(leaves.text(file.TEXT()), List.of(), List.of(), leaves.line(file)));
      } else if (item instanceof TestTableContext table) {
        tables.add(new Tables(leaves, diagnostics).table(table, leaves.whole(table.header())));
      }
    }
    return build.single(tables, "the table", Tree.Table::span);
  }

  private List<Tree.Steps> stepBlocks(List<TestItemContext> items) {
    List<Tree.Steps> blocks = new ArrayList<>();
    for (TestItemContext item : items) {
      if (item instanceof TestStepsContext block && leaves.whole(block.stepsHead())) {
        StepsHeadContext head = block.stepsHead();
        Tree.Steps.When when =
            head.BEFORE() != null
                ? Tree.Steps.When.BEFORE
                : head.AFTER() != null ? Tree.Steps.When.AFTER : Tree.Steps.When.EACH;
        blocks.add(
            new Tree.Steps(
                when,
                leaves.optionalName(head.name()),
                steps.steps(block.step()),
                leaves.line(head)));
      }
    }
    return blocks;
  }
}
