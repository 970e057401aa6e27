package passband.diff;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import passband.limit.Limit;
import passband.model.Analyzer;
import passband.model.Device.Mode;
import passband.model.Lead;
import passband.plan.Fact;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.plan.Wire;
import passband.source.SourceFile;
import passband.source.Span;
import passband.syntax.Adjust;
import passband.syntax.OnlyWhen;
import passband.syntax.Tree;
import passband.syntax.Word;

/** The lines that a fact of a plan comes from. */
final class Origins {
  private final @Nullable Plan plan;
  private final Map<Span, List<Stage.Run>> runs = new HashMap<>();
  private final Map<Span, Point> rows = new HashMap<>();
  private final Map<Limit, Point> points = new IdentityHashMap<>();

  /**
   * @param plan null for a profile or a rule by itself, whose facts have lines of their own alone
   */
  Origins(@Nullable Plan plan) {
    this.plan = plan;
    for (Stage.Run run : plan == null ? List.<Stage.Run>of() : plan.runs()) {
      of(run.test().span(), run);
      for (Point point : run.points()) {
        of(point.span(), run);
        rows.put(point.span(), point);
        point.limits().forEach(limit -> points.put(limit, point));
      }
      if (run.setup() != null) {
        of(run.setup().span(), run);
        of(run.setup().name().span(), run);
        for (Wire wire : run.setup().wires()) {
          of(wire.span(), run);
        }
      }
    }
  }

  private void of(Span span, Stage.Run run) {
    List<Stage.Run> here = runs.computeIfAbsent(span, s -> new ArrayList<>());
    if (here.isEmpty() || here.get(here.size() - 1) != run) {
      here.add(run);
    }
  }

  /** Every file that something of a plan is written in, in order of path. */
  static Collection<SourceFile> files(Iterable<Fact> facts) {
    Map<String, SourceFile> files = new TreeMap<>();
    for (Fact fact : facts) {
      if (fact.span() != null) {
        files.put(fact.span().file().path(), fact.span().file());
      }
      if (fact.limit() != null) {
        SourceFile rule = fact.limit().rule().span().file();
        files.put(rule.path(), rule);
      }
    }
    return files.values();
  }

  /**
   * The lines, the nearest first.
   *
   * @param aspect what of it changed
   */
  List<Span> of(Fact fact, Aspect aspect) {
    List<Span> lines = new ArrayList<>();
    if (fact.limit() != null) {
      limit(lines, fact.limit(), aspect);
    }
    Point row = fact.span() == null ? null : rows.get(fact.span());
    if (fact.area() == Fact.Area.DUTY) {
      times(lines, fact, row);
    }
    add(lines, fact.span());
    included(lines, fact.span());
    for (Stage.Run run : fact.span() == null ? List.<Stage.Run>of() : tests(fact.span())) {
      test(lines, run);
    }
    if (row != null && fact.area() != Fact.Area.POINT) {
      mode(lines, row.mode());
    }
    if (fact.area() == Fact.Area.ANALYZER || fact.area() == Fact.Area.PROFILE) {
      if (fact.key().contains("measure/")) {
        range(lines, fact.span());
      } else {
        block(lines, fact.span());
      }
    }
    if (plan != null) {
      shared(lines, fact, plan);
    }
    return lines;
  }

  /** The lines that include the parts in which something stands. */
  private void included(List<Span> lines, @Nullable Span span) {
    Plan whole = plan;
    for (Span at = span; whole != null && at != null; ) {
      at = whole.source().includedBy(at);
      add(lines, at);
    }
  }

  /** What says how long the output is on and rests, before the row that is worked so. */
  private void times(List<Span> lines, Fact fact, @Nullable Point row) {
    if (row != null && row.mode() != null) {
      duty(lines, row.mode());
    }
    for (Stage.Run run : fact.span() == null ? List.<Stage.Run>of() : tests(fact.span())) {
      add(lines, run.tree().onTime() == null ? null : run.tree().onTime().span());
    }
    if (row != null && plan != null) {
      plan.instruments().units().forEach(unit -> settle(lines, unit));
    }
  }

  private void limit(List<Span> lines, Limit limit, Aspect aspect) {
    switch (aspect) {
      case DECISION -> {
        decision(lines);
        reading(lines, limit);
        tolerance(lines, limit);
      }
      case UNCERTAINTY -> {
        reading(lines, limit);
        tolerance(lines, limit);
        decision(lines);
      }
      case ITSELF -> {
        tolerance(lines, limit);
        decision(lines);
        reading(lines, limit);
      }
    }
    Point point = points.get(limit);
    mode(lines, point == null ? null : point.mode());
  }

  /** What reaches more than a line says. */
  private static void shared(List<Span> lines, Fact fact, Plan plan) {
    if (fact.area() == Fact.Area.STEPS || fact.area() == Fact.Area.STOP) {
      actions(lines, plan);
    }
    if (fact.area() == Fact.Area.DUTY) {
      plan.instruments().units().forEach(unit -> settle(lines, unit));
    }
    settings(lines, plan);
    heading(lines, plan);
  }

  /** What a setting can be set to is in the rows, the steps that set it and their order. */
  private static void settings(List<Span> lines, Plan plan) {
    plan.device().settings().forEach(one -> add(lines, one.tree().span()));
    for (Analyzer unit : plan.instruments().units()) {
      unit.settings().forEach(one -> add(lines, one.tree().span()));
    }
  }

  private List<Stage.Run> tests(Span span) {
    return runs.getOrDefault(span, List.of());
  }

  /** The rule, the mode's tolerance and the row. */
  private void tolerance(List<Span> lines, Limit limit) {
    add(lines, limit.rule().span());
    Point point = points.get(limit);
    if (point != null) {
      add(lines, point.span());
      tolerances(lines, point.mode());
    }
  }

  private void decision(List<Span> lines) {
    if (plan != null) {
      add(lines, plan.source().decision());
    }
  }

  /** What it is read with. */
  private void reading(List<Span> lines, Limit limit) {
    range(lines, limit.range() == null ? null : limit.range().span());
    if (plan != null) {
      for (Analyzer.LoadBank bank : plan.instruments().loads()) {
        block(lines, bank.span());
      }
      plan.instruments().units().forEach(unit -> settle(lines, unit));
    }
  }

  private static void mode(List<Span> lines, @Nullable Mode mode) {
    if (mode == null) {
      return;
    }
    tolerances(lines, mode);
    duty(lines, mode);
    block(lines, mode.tree().span());
  }

  private static void tolerances(List<Span> lines, @Nullable Mode mode) {
    if (mode == null) {
      return;
    }
    if (mode.output() != null) {
      add(lines, mode.output().span());
    }
    mode.limits().forEach(limit -> add(lines, limit.span()));
  }

  private static void duty(List<Span> lines, Mode mode) {
    add(lines, mode.tree().duty() == null ? null : mode.tree().duty().span());
  }

  private static void test(List<Span> lines, Stage.Run run) {
    Tree.Test test = run.tree();
    test.outlets().forEach(outlet -> add(lines, outlet.span()));
    add(lines, test.setup());
    add(lines, test.output());
    OnlyWhen when = test.conditions().when();
    add(lines, when == null ? null : when.span());
    add(lines, test.onTime() == null ? null : test.onTime().span());
    add(lines, test.sweep() == null ? null : test.sweep().span());
    add(lines, test.name());
    if (run.setup() != null) {
      add(lines, run.setup().name().span());
    }
  }

  private static void actions(List<Span> lines, Plan plan) {
    plan.device().actions().values().forEach(action -> add(lines, action.span()));
    for (Analyzer unit : plan.instruments().units()) {
      unit.actions().values().forEach(action -> add(lines, action.span()));
    }
    for (Lead lead : plan.leads()) {
      add(lines, lead.name().span());
    }
  }

  private static void settle(List<Span> lines, Analyzer unit) {
    add(lines, unit.tree().timing().settle() == null ? null : unit.tree().timing().settle().span());
    add(lines, unit.tree().timing().reads() == null ? null : unit.tree().timing().reads().span());
  }

  /** What the procedure says of the whole: a change of it reaches everything. */
  private static void heading(List<Span> lines, Plan plan) {
    Tree.Procedure tree = plan.tree();
    add(lines, tree.device());
    tree.instruments().forEach(one -> add(lines, one.span()));
    tree.leads().forEach(word -> add(lines, word));
    tree.phases().forEach(word -> add(lines, word));
    for (Tree.Part part : tree.parts()) {
      if (part instanceof Adjust adjust) {
        add(lines, adjust.name());
      }
    }
  }

  private static void add(List<Span> lines, @Nullable Word word) {
    add(lines, word == null ? null : word.span());
  }

  private static void add(List<Span> lines, @Nullable Span span) {
    if (span != null) {
      lines.add(span);
    }
  }

  /** Every line of a range: where it has no block of its own, of the one that it is in. */
  private static void range(List<Span> lines, @Nullable Span head) {
    if (head == null || opened(head.file().line(head.line())) > 0) {
      block(lines, head);
      return;
    }
    SourceFile file = head.file();
    int line = head.line();
    for (int depth = 0; depth <= 0 && line > 1; depth += opened(file.line(line))) {
      line--;
    }
    int start = file.lineStart(line);
    block(lines, new Span(file, start, start));
  }

  /** Every line of a block, from the line that opens it. */
  private static void block(List<Span> lines, @Nullable Span head) {
    if (head == null) {
      return;
    }
    SourceFile file = head.file();
    int depth = 0;
    for (int line = head.line(); line <= file.lineCount(); line++) {
      int start = file.lineStart(line);
      lines.add(new Span(file, start, start));
      depth += opened(file.line(line));
      if (depth <= 0) {
        return;
      }
    }
  }

  /** How many more blocks a line opens than it closes. */
  private static int opened(String line) {
    int opened = 0;
    boolean text = false;
    for (int i = 0; i < line.length() && (text || line.charAt(i) != '#'); i++) {
      char c = line.charAt(i);
      text ^= c == '"';
      opened += text ? 0 : c == '{' ? 1 : c == '}' ? -1 : 0;
    }
    return opened;
  }
}
