package passband.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import passband.limit.Decision;
import passband.plan.Fact.Area;
import passband.quantity.Rational;
import passband.syntax.DecisionKind;
import passband.syntax.Word;
import passband.words.Language;

/** What a procedure says before its first step. */
final class MeaningOfProcedure {
  private final FactList facts;
  private final Naming naming;

  MeaningOfProcedure(FactList facts, Naming naming) {
    this.facts = facts;
    this.naming = naming;
  }

  void add(Plan plan) {
    var at = plan.name().span();
    facts.add(Fact.text(Area.NAME, "procedure", "the procedure's name", plan.name().text(), at));
    facts.add(Fact.text(Area.TEXT, "title", "the title", plan.title(), at));
    revision(plan);
    decision(plan);
    facts.add(
        Fact.of(
            Area.CONDITION,
            "phases",
            "the phases",
            Canonical.of(plan.phases()),
            String.join(", ", plan.phases()),
            at));
    language(plan);
    cautions(plan);
    rests(plan);
    allowed(plan);
  }

  /** Whoever stops puts settings back in the order of the profiles. */
  private void rests(Plan plan) {
    List<String> ids = new ArrayList<>();
    Rests.of(plan).forEach(rest -> ids.add(rest.id()));
    if (!ids.isEmpty()) {
      String subject = "the order of the settings that are put back";
      facts.add(Fact.order(Area.ORDER, "rests", subject, ids, plan.name().span()));
    }
  }

  /** English has no fact: it need not be said. */
  private void language(Plan plan) {
    Word code = plan.tree().language();
    if (code != null && plan.language() != Language.ENGLISH) {
      String text = plan.language().code();
      facts.add(Fact.text(Area.TEXT, "language", "the language", text, code.span()));
    }
  }

  private void revision(Plan plan) {
    Plan.Revision r = plan.revision();
    String canonical =
        Canonical.of(r.label(), r.date(), r.replaces(), r.replacesDate(), r.replacesDigest());
    boolean first = r.replaces() == null && r.replacesDate() == null && r.replacesDigest() == null;
    String day = r.replacesDate() == null ? "" : " on " + r.replacesDate();
    String replaces = ", replaces " + r.replaces() + day + " (" + r.replacesDigest() + ")";
    String shown = r.label() + " on " + r.date() + (first ? "" : replaces);
    facts.add(
        Fact.of(Area.REVISION, "revision", "revision", canonical, shown, plan.source().revision()));
  }

  /** The factor k counts with every rule: it is in the uncertainties that the tables print. */
  private void decision(Plan plan) {
    Decision d = plan.decision();
    boolean simple = d.kind() == DecisionKind.SIMPLE;
    facts.add(
        Fact.of(
            Area.DECISION,
            "decision",
            "the decision rule",
            Canonical.of(d.kind().word(), d.risk(), d.coverage())
                + (d.prior() == null ? "" : Canonical.of(d.prior())),
            d.text()
                + (simple ? ", k = " + d.coverage().toPlain() : "")
                + (d.prior() == null
                    ? ""
                    : ", prior " + d.prior().times(Rational.HUNDRED).toPlain() + " %"),
            plan.source().decision()));
  }

  private void cautions(Plan plan) {
    List<String> names = new ArrayList<>();
    for (Plan.Caution caution : plan.cautions()) {
      String name = caution.name().text();
      names.add(name);
      facts.add(
          Fact.text(
              Area.CAUTION,
              "caution/" + name,
              "caution '" + name + "'",
              caution.text(),
              caution.name().span()));
    }
    facts.add(
        Fact.order(Area.ORDER, "cautions", "the order of the cautions", names, plan.name().span()));
  }

  /** A code in a declaration with all its reasons; the sheet sorts them, so no order counts. */
  private void allowed(Plan plan) {
    Map<String, List<Plan.Allowed>> byPlace = new LinkedHashMap<>();
    for (Plan.Allowed allow : plan.allowed()) {
      String key = "allow/" + naming.place(allow.place()) + "/" + allow.code();
      byPlace.computeIfAbsent(key, k -> new ArrayList<>()).add(allow);
    }
    byPlace.forEach(this::allowed);
  }

  private void allowed(String key, List<Plan.Allowed> allows) {
    List<String> reasons = new ArrayList<>();
    allows.forEach(a -> reasons.add(a.reason()));
    reasons.sort(null);
    Plan.Allowed last = allows.get(allows.size() - 1);
    facts.add(
        Fact.of(
            Area.ALLOW,
            key,
            last.code() + " in " + naming.place(last.place()),
            Canonical.of(reasons),
            String.join(" / ", reasons),
            last.span()));
  }
}
