package passband.compile;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.diagnostic.Spelling;
import passband.limit.Decision;
import passband.model.Device;
import passband.model.Instruments;
import passband.model.Lead;
import passband.model.Named;
import passband.plan.Plan;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.resolve.Included;
import passband.resolve.Profiles;
import passband.resolve.Scope;
import passband.source.Span;
import passband.syntax.DecisionKind;
import passband.syntax.Heading;
import passband.syntax.Tree;
import passband.syntax.Word;
import passband.words.Language;

/** Compiles one procedure: names, points, limits, steps, wiring, in bench order. */
final class Planner {
  private final Tree.Procedure tree;
  private final Included included;
  private final Scope scope;
  private final Profiles profiles;
  private final Retarget others;
  private final InstrumentRoles.Declared declared;
  private final TableFiles tables;
  private final Diagnostics diagnostics;

  /** Reads the table files that a source names. */
  interface TableFiles {
    /** The table; null, with the fault said, when it cannot be read. */
    Tree.@Nullable Table read(Tree.Table named);
  }

  /** Whether each set of leads that the procedure names is there. */
  private boolean allLeads = true;

  /**
   * @param others the instruments to compile for instead of the procedure's own
   * @param declared finds one by its name, wherever in the library it is
   */
  Planner(
      Included included,
      Scope scope,
      Profiles profiles,
      Retarget others,
      InstrumentRoles.Declared declared,
      TableFiles tables,
      Diagnostics diagnostics) {
    this.tree = RuleDerives.in(included.whole(), scope);
    this.included = included;
    this.scope = scope;
    this.profiles = profiles;
    this.others = others;
    this.declared = declared;
    this.tables = tables;
    this.diagnostics = diagnostics;
  }

  /**
   * The plan; null, with the faults said, when the procedure has no device or no instrument to plan
   * for.
   */
  @Nullable Plan plan() {
    diagnostics.including(included.places(), tree.name().span());
    Plan plan = planned();
    diagnostics.including(Map.of(), tree.name().span());
    return plan;
  }

  private @Nullable Plan planned() {
    Device device = device();
    Instruments instruments = instruments(device);
    List<Lead> leads = leads();
    if (device == null || instruments == null) {
      return null;
    }
    language();
    Decision decision = decision();
    List<Plan.Caution> cautions = cautions();
    return new Plan(
        tree.name(),
        tree.title() == null ? tree.name().text() : tree.title().text(),
        revision(),
        new Plan.Bench(device, instruments, leads),
        decision,
        cautions,
        phases(),
        stages(device, instruments, leads, decision),
        allowed(device, instruments),
        new Plan.Made(),
        source());
  }

  /** Says what is wrong with the head of a part, whatever procedure includes it. */
  void head() {
    language();
    decision();
    phases();
  }

  private Plan.Source source() {
    Span name = tree.name().span();
    return new Plan.Source(
        tree,
        tree.revision() == null ? name : tree.revision().span(),
        tree.decision() == null ? name : tree.decision().span(),
        included.places());
  }

  private void language() {
    Word code = tree.language();
    if (code != null && Language.named(code.text()) == null) {
      List<String> known = new ArrayList<>();
      Language.all().forEach(one -> known.add(one.code()));
      String near = Spelling.nearest(code.text(), known);
      DiagnosticBuilder said =
          diagnostics
              .say(
                  Code.UNKNOWN_LANGUAGE,
                  code.span(),
                  "sheets are not printed in the language '%s'",
                  code.text())
              .meant(near, "known here: %s", String.join(", ", known));
      for (String one : near == null ? known : List.<String>of()) {
        said.fix(Fix.replace(code.span(), one));
      }
    }
  }

  // ---- what the procedure names ----

  private @Nullable Device device() {
    if (tree.device() == null) {
      missing("device", "device NAME");
      return null;
    }
    Tree.Device found = scope.find(Tree.Device.class, "device", tree.device());
    return found == null ? null : profiles.device(found);
  }

  private @Nullable Instruments instruments(@Nullable Device device) {
    if (tree.instruments().isEmpty()) {
      missing("analyzer", "analyzer NAME");
      return null;
    }
    return new InstrumentRoles(tree, scope, profiles, others, declared, diagnostics).of(device);
  }

  private void missing(String what, String write) {
    diagnostics
        .say(
            Code.MISSING_ITEM,
            tree.name().span(),
            "the procedure '%s' names no %s",
            tree.name().text(),
            what)
        .hint("add '%s'", write);
  }

  private List<Lead> leads() {
    allLeads = true;
    List<Lead> leads = new ArrayList<>();
    List<Word> named = new ArrayList<>();
    for (Word name : tree.leads()) {
      if (isNamedBefore(name, named)) {
        continue;
      }
      Tree.Leads found = scope.find(Tree.Leads.class, "leads", name);
      allLeads &= found != null;
      for (Lead lead : found == null ? List.<Lead>of() : profiles.leads(found)) {
        Lead twin = Named.find(leads, lead.name().text());
        if (twin == null) {
          leads.add(lead);
        } else {
          diagnostics
              .say(
                  Code.DUPLICATE_NAME,
                  lead.name().span(),
                  "'%s' is in two of the procedure's sets of leads",
                  lead.name().text())
              .note(twin.name().span(), "the other is here");
        }
      }
    }
    return List.copyOf(leads);
  }

  private boolean isNamedBefore(Word name, List<Word> named) {
    for (Word other : named) {
      if (other.text().equals(name.text())) {
        diagnostics
            .say(Code.REPEATED_ITEM, name.span(), "the leads '%s' are named twice", name.text())
            .note(other.span(), "first named here");
        return true;
      }
    }
    named.add(name);
    return false;
  }

  private Decision decision() {
    Heading.Decision written = tree.decision();
    if (written == null) {
      return Decision.SIMPLE;
    }
    Rational coverage = written.coverage() == null ? Rational.TWO : written.coverage().number();
    Rational risk = written.risk() == null ? null : written.risk().number();
    if (coverage == null || coverage.signum() <= 0 || (written.risk() != null && risk == null)) {
      diagnostics.say(
          Code.WRONG_KIND, written.span(), "the coverage factor must be greater than zero");
      return Decision.SIMPLE;
    }
    Rational share = risk == null ? null : risk.over(Rational.HUNDRED);
    if (written.risk() != null
        && share != null
        && (share.signum() <= 0 || share.compareTo(Rational.of(1, 2)) > 0)) {
      diagnostics.say(
          Code.WRONG_KIND, written.risk().span(), "the risk must be above 0 %% and at most 50 %%");
      return Decision.SIMPLE;
    }
    if (written.kind() == DecisionKind.MANAGED && coverage.compareTo(Rational.TWO) != 0) {
      diagnostics
          .say(
              Code.IMPOSSIBLE_EXPRESSION,
              written.span(),
              "the managed guard band is made for uncertainties with a coverage of 95 %%")
          .hint("leave 'coverage' out");
      return Decision.SIMPLE;
    }
    Rational prior = written.prior() == null ? null : written.prior().number();
    Rational inside = prior == null ? null : prior.over(Rational.HUNDRED);
    if (written.prior() != null
        && (inside == null || inside.signum() <= 0 || inside.compareTo(Rational.ONE) >= 0)) {
      diagnostics.say(
          Code.WRONG_KIND,
          written.prior().span(),
          "the share in tolerance must be above 0 %% and below 100 %%");
      return Decision.SIMPLE;
    }
    return new Decision(written.kind(), share, coverage, inside);
  }

  private Plan.Revision revision() {
    Heading.Revision written = tree.revision();
    if (written == null) {
      missing("revision", "revision \"A\" on 2026-01-31");
      return new Plan.Revision("", "", null, null, null);
    }
    if (written.replaces() != null && written.replaces().text().equals(written.label().text())) {
      diagnostics
          .say(
              Code.REVISION_BACKWARDS,
              written.replaces().span(),
              "this revision replaces one of its own label")
          .note(written.label().span(), "the label of this one");
    }
    LocalDate date = date(written.date());
    LocalDate before = date(written.replacesDate());
    if (written.replacesDate() != null && date != null && before != null && date.isBefore(before)) {
      diagnostics
          .say(
              Code.REVISION_BACKWARDS,
              written.date().span(),
              "this revision is dated before the one it replaces")
          .note(written.replacesDate().span(), "the date of that one");
    }
    return new Plan.Revision(
        written.label().text(),
        written.date().text(),
        text(written.replaces()),
        text(written.replacesDate()),
        text(written.replacesDigest()));
  }

  private static @Nullable String text(@Nullable Word word) {
    return word == null ? null : word.text();
  }

  private @Nullable LocalDate date(@Nullable Word word) {
    if (word == null) {
      return null;
    }
    try {
      // The word is YYYY-MM-DD. LocalDate.parse has Java set up all that a date can print.
      String day = word.text();
      return LocalDate.of(
          Integer.parseInt(day, 0, 4, 10),
          Integer.parseInt(day, 5, 7, 10),
          Integer.parseInt(day, 8, 10, 10));
    } catch (DateTimeException e) {
      diagnostics.say(Code.SYNTAX, word.span(), "%s is not a valid date", word.text());
      return null;
    }
  }

  private List<Plan.Caution> cautions() {
    List<Plan.Caution> cautions = new ArrayList<>();
    for (Heading.Caution caution : tree.cautions()) {
      Plan.Caution twin = Named.find(cautions, caution.name().text());
      if (twin != null) {
        diagnostics
            .say(
                Code.DUPLICATE_NAME,
                caution.name().span(),
                "caution '%s' is given twice",
                caution.name().text())
            .note(twin.name().span(), "first given here");
      }
      cautions.add(new Plan.Caution(caution.name(), caution.text().text()));
    }
    return cautions;
  }

  private List<String> phases() {
    List<String> phases = new ArrayList<>();
    for (Word phase : tree.phases()) {
      if (phases.contains(phase.text())) {
        diagnostics.say(
            Code.DUPLICATE_NAME, phase.span(), "phase '%s' is listed twice", phase.text());
      } else {
        phases.add(phase.text());
      }
    }
    return phases;
  }

  private List<Plan.Allowed> allowed(Device device, Instruments instruments) {
    List<Plan.Allowed> allowed = new ArrayList<>();
    add(allowed, device.tree().allows(), "device " + device.name().text());
    device.modes().forEach(m -> add(allowed, m.tree().allows(), "mode " + m.name().text()));
    for (Tree.Analyzer one : instruments.declarations()) {
      add(allowed, one.allows(), "analyzer " + one.name().text());
    }
    tree.leads().forEach(name -> addOf(Tree.Leads.class, Tree.Leads::allows, name.text(), allowed));
    ruleNames().forEach(name -> addOf(Tree.Rule.class, Tree.Rule::allows, name, allowed));
    add(allowed, tree.allows(), "procedure " + tree.name().text());
    tree.setups().forEach(s -> add(allowed, s.allows(), "setup " + s.name().text()));
    for (Tree.Part part : tree.parts()) {
      if (part instanceof Tree.Test test) {
        add(allowed, test.allows(), "test " + test.name().text());
      }
    }
    return allowed;
  }

  private Set<String> ruleNames() {
    Set<String> names = new TreeSet<>();
    for (Tree.Part part : tree.parts()) {
      if (part instanceof Tree.Test test) {
        for (Tree.Accept accept : test.accepts()) {
          if (accept.by() != null) {
            names.add(accept.by().text());
          }
        }
      }
    }
    return names;
  }

  private <D extends Tree.Declaration> void addOf(
      Class<D> type, Function<D, List<Tree.Allow>> allows, String name, List<Plan.Allowed> to) {
    for (D one : scope.all(type)) {
      if (one.name().text().equals(name)) {
        add(to, allows.apply(one), one.kind() + " " + name);
      }
    }
  }

  private static void add(List<Plan.Allowed> to, List<Tree.Allow> allows, String place) {
    allows.forEach(
        a -> to.add(new Plan.Allowed(a.code().text(), a.reason().text(), place, a.span())));
  }

  // ---- stages ----

  private List<Stage> stages(
      Device device, Instruments instruments, List<Lead> leads, Decision decision) {
    Scope.distinct(diagnostics, "the name", tree.parts(), Tree.Part::name);
    Recorded recorded = new Recorded(diagnostics);
    recorded.declare(tree);
    Steps steps = new Steps(device, instruments, recorded, scope.names(), diagnostics);
    Setups setups =
        new Setups(tree.setups(), device, instruments, leads, scope.names(), diagnostics);
    if (!allLeads) {
      setups.ignoreUnknownLeads();
    }
    List<TestPlanner> tests = new ArrayList<>();
    for (Tree.Test test : tree.tests()) {
      TestPlanner planner =
          new TestPlanner(test, device, instruments, decision, setups, steps, scope, diagnostics);
      planner.resolve(tables);
      tests.add(planner);
    }
    distinctTitles(tests);
    BenchOrder order = new BenchOrder(tree, tests, steps, scope.names(), diagnostics);
    tests.forEach(t -> recorded.count(t.tree(), t.outlets().size() * order.times(t), t.points()));
    List<Stage> stages = order.stages();
    diagnostics.sharing(List.of(), tree.name().span());
    setups.nameUnused();
    return stages;
  }

  /** On one outlet the sheet's headings tell tests apart. */
  private void distinctTitles(List<TestPlanner> tests) {
    for (int i = 0; i < tests.size(); i++) {
      for (int j = 0; j < i; j++) {
        Word title = tests.get(i).tree().title();
        Word other = tests.get(j).tree().title();
        if (title != null
            && other != null
            && title.text().equals(other.text())
            && !Collections.disjoint(tests.get(i).outlets(), tests.get(j).outlets())) {
          diagnostics
              .say(
                  Code.PRINTED_NAME_REPEATED,
                  title.span(),
                  "two tests on one outlet have the printed name \"%s\"",
                  title.text())
              .note(other.span(), "the other is here");
        }
      }
    }
  }
}
