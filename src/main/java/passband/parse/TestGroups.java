package passband.parse;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.antlr.v4.runtime.ParserRuleContext;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.parse.antlr.PassbandParser.*;
import passband.source.Span;
import passband.syntax.Amount;
import passband.syntax.Conditions;
import passband.syntax.OnlyWhen;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * Takes {@code tests { … }} apart: each test inside, a block or some rows of a table, as if it had
 * been written by itself. What it does not say is what the lines around it say.
 */
final class TestGroups {
  private final Terminals leaves;
  private final ItemBuilder build;
  private final TestBuilder tests;
  private final Tables tables;
  private final Diagnostics diagnostics;

  TestGroups(Terminals leaves, ItemBuilder build, TestBuilder tests, Diagnostics diagnostics) {
    this.leaves = leaves;
    this.build = build;
    this.tests = tests;
    this.tables = new Tables(leaves, diagnostics);
    this.diagnostics = diagnostics;
  }

  /** What the lines of a group say, and where. */
  private record Shared(Conditions conditions, List<Tree.Accept> accepts, List<Span> lines) {
    Tree.Test with(Tree.Test own, boolean row) {
      return new Tree.Test(
          own.name(),
          own.title(),
          own.renamedFrom(),
          own.conditions().or(conditions, lines, row),
          own.sweep(),
          own.derives(),
          own.accepts().isEmpty() ? accepts : own.accepts(),
          own.table(),
          own.steps(),
          own.allows(),
          own.span());
    }
  }

  /** Its tests, in the order written. */
  List<Tree.Test> tests(TestGroupContext group) {
    Shared shared = shared(group.testItem());
    List<Tree.Test> found = new ArrayList<>();
    for (ParserRuleContext child : group.getRuleContexts(ParserRuleContext.class)) {
      if (child instanceof TestContext test && leaves.whole(test.testHead())) {
        found.add(shared.with(tests.test(test), false));
      } else if (child instanceof TestTableContext table && leaves.whole(table.header())) {
        found.addAll(ofTable(table, shared));
      }
    }
    if (group.test().isEmpty() && group.testItem().stream().noneMatch(TestGroups::isTable)) {
      diagnostics
          .say(
              Code.MISSING_ITEM,
              Lexer.span(leaves.source(), group.start),
              "there is no test in these 'tests'")
          .hint("add 'test NAME { … }' or a table with a column 'test'");
    }
    return found;
  }

  private static boolean isTable(TestItemContext item) {
    return item instanceof TestTableContext;
  }

  private Shared shared(List<TestItemContext> lines) {
    Conditions conditions = tests.conditions(lines);
    List<Tree.Accept> accepts = tests.accepts(lines);
    List<Span> where = new ArrayList<>(conditions.spans());
    accepts.forEach(accept -> where.add(accept.span()));
    return new Shared(conditions, accepts, where);
  }

  // ---- a table of tests ----

  private List<Tree.Test> ofTable(TestTableContext table, Shared shared) {
    List<ColumnContext> columns = table.header().column();
    int named = column(columns, "test");
    if (named < 0) {
      diagnostics.say(
          Code.MISSING_COLUMN,
          leaves.line(table.header()),
          "a table of several tests needs a column 'test', which names each in its first row");
      return List.of();
    }
    List<Span> lines = new ArrayList<>(shared.lines());
    lines.add(leaves.line(table.header()));
    Shared around = new Shared(shared.conditions(), shared.accepts(), lines);
    List<Tree.Test> found = new ArrayList<>();
    for (List<RowContext> rows : byTest(table.row(), columns, named)) {
      Tree.Test test = test(rows, columns, table);
      if (test != null) {
        found.add(around.with(test, true));
      }
    }
    return found;
  }

  /** The sound rows of each test: a row without a name goes on with the test before it. */
  private List<List<RowContext>> byTest(
      List<RowContext> rows, List<ColumnContext> columns, int named) {
    List<List<RowContext>> found = new ArrayList<>();
    boolean lost = false;
    for (RowContext row : rows) {
      if (!leaves.whole(row) || !tables.counted(row, row.cell().size(), columns)) {
        lost = true;
      } else if (!isBlank(row.cell(named))) {
        lost = false;
        found.add(new ArrayList<>(List.of(row)));
      } else if (!found.isEmpty()) {
        found.get(found.size() - 1).add(row);
      } else if (!lost) {
        diagnostics.say(
            Code.BLANK_CELL,
            leaves.line(row),
            "the first row does not name its test: NAME \"TITLE\" in the column 'test'");
      }
    }
    return found;
  }

  private Tree.@Nullable Test test(
      List<RowContext> rows, List<ColumnContext> columns, TestTableContext table) {
    RowContext first = rows.get(0);
    CellItemContext head = only(first.cell(column(columns, "test")));
    Word name = null;
    Word title = null;
    if (head instanceof CellTestContext named) {
      name = leaves.name(named.name());
      title = leaves.text(named.TEXT());
    } else if (head instanceof CellNameContext plain && plain.ref().name().size() == 1) {
      name = leaves.name(plain.ref().name(0));
    }
    if (name == null) {
      say(first.cell(column(columns, "test")), "expected a test: NAME or NAME \"TITLE\"");
      return null;
    }
    sayOnceOnly(rows, columns);
    CellContext accepted = cell(first, columns, "accept");
    List<Word> setups = names(cell(first, columns, "setup"));
    return new Tree.Test(
        name,
        title,
        null,
        new Conditions(
            names(cell(first, columns, "outlet")),
            setups.isEmpty() ? null : setups.get(0),
            state(cell(first, columns, "inside")),
            when(cell(first, columns, "when")),
            output(cell(first, columns, "output")),
            onTime(cell(first, columns, "on-time")),
            null),
        null,
        List.of(),
        accepted == null ? List.of() : accepts(accepted),
        points(rows, columns, table),
        List.of(),
        List.of(),
        name.span());
  }

  /** What holds for a whole test stands in its first row. */
  private void sayOnceOnly(List<RowContext> rows, List<ColumnContext> columns) {
    for (RowContext row : rows.subList(1, rows.size())) {
      for (String word : Conditions.COLUMNS) {
        CellContext cell = cell(row, columns, word);
        if (cell != null) {
          diagnostics
              .say(
                  Code.BAD_CELL,
                  leaves.span(cell),
                  "'%s' of a test is given in its first row",
                  word)
              .note(leaves.line(rows.get(0)), "the test begins here");
        }
      }
    }
  }

  private List<Tree.Accept> accepts(CellContext cell) {
    if (cell.acceptance() == null) {
      say(cell, "expected what is accepted, as after 'accept'");
      return List.of();
    }
    return build.acceptance(cell.acceptance(), leaves.span(cell));
  }

  private List<Word> names(@Nullable CellContext cell) {
    List<Word> names = new ArrayList<>();
    for (CellItemContext item : cell == null ? List.<CellItemContext>of() : cell.cellItem()) {
      if (item instanceof CellNameContext name && name.ref().name().size() == 1) {
        names.add(leaves.name(name.ref().name(0)));
      } else {
        say(Objects.requireNonNull(cell), "expected a name");
      }
    }
    return names;
  }

  private Tree.@Nullable Ref state(@Nullable CellContext cell) {
    if (cell == null) {
      return null;
    }
    if (only(cell) instanceof CellNameContext name) {
      return leaves.ref(name.ref());
    }
    say(cell, "expected a state, as after 'inside'");
    return null;
  }

  private @Nullable OnlyWhen when(@Nullable CellContext cell) {
    if (cell == null) {
      return null;
    }
    if (cell.IS() != null) {
      List<Word> is = new ArrayList<>();
      cell.TEXT().forEach(text -> is.add(leaves.text(text)));
      return new OnlyWhen(leaves.name(cell.name()), is, leaves.span(cell));
    }
    say(cell, "expected an outcome, as after 'when': NAME is \"…\"");
    return null;
  }

  private @Nullable Word output(@Nullable CellContext cell) {
    if (cell != null && !cell.getText().equals("off") && !cell.getText().equals("inhibited")) {
      say(cell, "expected 'off' or 'inhibited'; a test that delivers output leaves it blank");
      return null;
    }
    return cell == null ? null : new Word(cell.getText(), leaves.span(cell));
  }

  private @Nullable Amount onTime(@Nullable CellContext cell) {
    if (cell == null) {
      return null;
    }
    if (only(cell) instanceof CellAmountContext one && one.TO() == null) {
      return leaves.amount(one.amount(0));
    }
    say(cell, "expected a time, as after 'on-time'");
    return null;
  }

  /** The columns that any of its rows uses; null where none does. */
  private Tree.@Nullable Table points(
      List<RowContext> rows, List<ColumnContext> columns, TestTableContext table) {
    List<Tree.Column> used = new ArrayList<>();
    List<List<Tree.Cell>> cells = new ArrayList<>();
    rows.forEach(row -> cells.add(new ArrayList<>()));
    for (int i = 0; i < columns.size(); i++) {
      int at = i;
      if (!Conditions.COLUMNS.contains(columns.get(i).getText())
          && rows.stream().anyMatch(row -> !isBlank(row.cell(at)))) {
        used.add(tables.column(columns.get(i)));
        for (int row = 0; row < rows.size(); row++) {
          cells.get(row).add(tables.cell(rows.get(row).cell(i)));
        }
      }
    }
    List<Tree.Row> made = new ArrayList<>();
    for (int row = 0; row < rows.size(); row++) {
      made.add(new Tree.Row(cells.get(row), leaves.line(rows.get(row))));
    }
    return used.isEmpty()
        ? null
        : new Tree.Table(null, used, made, Lexer.span(leaves.source(), table.start));
  }

  // ---- cells ----

  private static int column(List<ColumnContext> columns, String word) {
    for (int i = 0; i < columns.size(); i++) {
      if (columns.get(i).getText().equals(word)) {
        return i;
      }
    }
    return -1;
  }

  /** The cell in the column of a word; null where it is blank or there is no such column. */
  private static @Nullable CellContext cell(
      RowContext row, List<ColumnContext> columns, String word) {
    int at = column(columns, word);
    return at < 0 || isBlank(row.cell(at)) ? null : row.cell(at);
  }

  private static boolean isBlank(CellContext cell) {
    return cell.cellItem().isEmpty() && cell.acceptance() == null && cell.IS() == null;
  }

  private static @Nullable CellItemContext only(CellContext cell) {
    return cell.cellItem().size() == 1 ? cell.cellItem(0) : null;
  }

  private void say(CellContext cell, String message) {
    diagnostics.say(Code.BAD_CELL, leaves.span(cell), "%s", message);
  }
}
