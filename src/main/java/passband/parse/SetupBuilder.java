package passband.parse;

import java.util.ArrayList;
import java.util.List;
import org.antlr.v4.runtime.ParserRuleContext;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.parse.antlr.PassbandParser.*;
import passband.syntax.LeadKind;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * From the contexts of setups to setups. Those of {@code setups { … }} come out as if each had been
 * written by itself: after its own lines stand those around it, but for leads that it connects.
 */
final class SetupBuilder {
  private final Terminals leaves;
  private final ItemBuilder build;
  private final Tables tables;
  private final Diagnostics diagnostics;

  SetupBuilder(Terminals leaves, ItemBuilder build, Diagnostics diagnostics) {
    this.leaves = leaves;
    this.build = build;
    this.tables = new Tables(leaves, diagnostics);
    this.diagnostics = diagnostics;
  }

  Tree.Setup setup(SetupContext setup) {
    SetupHeadContext head = setup.setupHead();
    return new Tree.Setup(
        leaves.name(head.name(0)),
        leaves.optionalText(head.TEXT()),
        head.FOR() == null ? null : leaves.name(head.name(1)),
        wires(setup.setupItem()),
        build.among(setup.setupItem(), SetupAllowContext.class, a -> build.allow(a.allow())),
        leaves.line(head));
  }

  private List<Tree.Wire> wires(List<SetupItemContext> items) {
    List<Tree.Wire> wires = new ArrayList<>();
    for (SetupItemContext item : items) {
      if (leaves.whole(item) && item instanceof WireContext w) {
        LeadKind kind = w.LINK() != null ? LeadKind.LINK : LeadKind.LEAD;
        List<Tree.Ref> ends = List.of(leaves.ref(w.ref(0)), leaves.ref(w.ref(1)));
        wires.add(new Tree.Wire(kind, leaves.name(w.name()), ends, leaves.line(w)));
      } else if (leaves.whole(item) && item instanceof TouchingContext t) {
        List<Tree.Ref> at = build.each(t.ref(), leaves::ref);
        wires.add(new Tree.Wire(LeadKind.ACCESSORY, leaves.name(t.name()), at, leaves.line(t)));
      }
    }
    return wires;
  }

  // ---- several with lines in common ----

  /** The setups of a group, in the order written. */
  List<Tree.Setup> setups(SetupGroupContext group) {
    List<Tree.Wire> shared = wires(group.setupItem());
    List<Tree.Setup> found = new ArrayList<>();
    for (ParserRuleContext child : group.getRuleContexts(ParserRuleContext.class)) {
      if (child instanceof SetupContext setup && leaves.whole(setup.setupHead())) {
        found.add(with(setup(setup), shared));
      } else if (child instanceof WireTableContext table && leaves.whole(table.wireHeader())) {
        rows(table).forEach(one -> found.add(with(one, shared)));
      }
    }
    if (group.setup().isEmpty() && group.wireTable().isEmpty()) {
      diagnostics
          .say(
              Code.MISSING_ITEM,
              Lexer.span(leaves.source(), group.start),
              "there is no setup in these 'setups'")
          .hint("add 'setup NAME { … }' or a table with a column 'setup'");
    }
    return found;
  }

  private static Tree.Setup with(Tree.Setup own, List<Tree.Wire> shared) {
    List<Tree.Wire> wires = new ArrayList<>(own.wires());
    for (Tree.Wire wire : shared) {
      if (!connects(own, wire.lead().text())) {
        wires.add(wire);
      }
    }
    return new Tree.Setup(
        own.name(), own.title(), own.analyzer(), List.copyOf(wires), own.allows(), own.span());
  }

  private static boolean connects(Tree.Setup setup, String lead) {
    for (Tree.Wire wire : setup.wires()) {
      if (wire.lead().text().equals(lead)) {
        return true;
      }
    }
    return false;
  }

  private List<Tree.Setup> rows(WireTableContext table) {
    List<WireColumnContext> columns = table.wireHeader().wireColumn();
    int named = -1;
    for (int i = 0; i < columns.size(); i++) {
      named = columns.get(i).SETUP() != null && named < 0 ? i : named;
    }
    if (named < 0) {
      diagnostics.say(
          Code.MISSING_COLUMN,
          leaves.line(table.wireHeader()),
          "a table of setups needs a column 'setup', which names the setup of each row");
      return List.of();
    }
    List<Tree.Setup> found = new ArrayList<>();
    for (WireRowContext row : table.wireRow()) {
      boolean sound = leaves.whole(row) && tables.counted(row, row.wireCell().size(), columns);
      Tree.Setup one = sound ? row(row, columns, named) : null;
      if (one != null) {
        found.add(one);
      }
    }
    return found;
  }

  private Tree.@Nullable Setup row(WireRowContext row, List<WireColumnContext> columns, int named) {
    WireCellContext head = row.wireCell(named);
    boolean plain = head.TO() == null && head.ref().size() == 1 && head.ref(0).name().size() == 1;
    if (head.TEXT() == null && !plain) {
      say(row, head, "expected a setup: NAME or NAME \"TITLE\"");
      return null;
    }
    List<Tree.Wire> wires = new ArrayList<>();
    for (int i = 0; i < columns.size(); i++) {
      WireCellContext cell = row.wireCell(i);
      if (i != named && cell.getChildCount() > 0) {
        Tree.Wire wire = wire(row, columns.get(i), cell);
        if (wire == null) {
          return null;
        }
        wires.add(wire);
      }
    }
    Word name = leaves.name(plain ? head.ref(0).name(0) : head.name());
    return new Tree.Setup(
        name, leaves.optionalText(head.TEXT()), null, wires, List.of(), name.span());
  }

  /** A lead from terminal to terminal, or an accessory at those that it touches. */
  private Tree.@Nullable Wire wire(
      WireRowContext row, WireColumnContext column, WireCellContext cell) {
    if (column.name() == null
        || cell.TEXT() != null
        || (cell.TO() == null && column.LINK() != null)) {
      say(
          row,
          cell,
          "expected two terminals, TERMINAL to TERMINAL, or those that an accessory touches");
      return null;
    }
    LeadKind kind =
        column.LINK() != null
            ? LeadKind.LINK
            : cell.TO() != null ? LeadKind.LEAD : LeadKind.ACCESSORY;
    return new Tree.Wire(
        kind, leaves.name(column.name()), build.each(cell.ref(), leaves::ref), leaves.span(cell));
  }

  private void say(WireRowContext row, WireCellContext cell, String message) {
    diagnostics.say(
        Code.BAD_CELL,
        cell.getChildCount() == 0 ? leaves.line(row) : leaves.span(cell),
        "%s",
        message);
  }
}
