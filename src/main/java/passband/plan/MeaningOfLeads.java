package passband.plan;

import java.util.ArrayList;
import java.util.List;
import passband.model.Lead;
import passband.plan.Fact.Area;

/** What the sets of leads say, and in which order the sheet numbers those in use. */
final class MeaningOfLeads {
  private final FactList facts;

  MeaningOfLeads(FactList facts) {
    this.facts = facts;
  }

  void add(Plan plan) {
    add(plan.leads());
    List<String> used = new ArrayList<>();
    plan.usedLeads().forEach(lead -> used.add(lead.name().text()));
    facts.add(
        Fact.order(
            Area.LEAD, "leads", "the order of the leads to collect", used, plan.name().span()));
  }

  /** Of leads by themselves. */
  void add(List<Lead> leads) {
    leads.forEach(this::lead);
  }

  private void lead(Lead lead) {
    String name = lead.name().text();
    String what = lead.kind().word();
    String rated = lead.rated() == null ? "no rating" : "rated " + lead.rated().toPlain() + " V";
    String canonical = Canonical.of(what, lead.title(), lead.rated(), lead.colour());
    if (lead.unknown() != null) {
      rated += ", " + FactText.known("", lead.unknown());
      canonical = Canonical.of(canonical, lead.unknown().reason());
    }
    facts.add(
        Fact.of(
            lead.unknown() == null ? Area.LEAD : Area.UNKNOWN,
            "lead/" + name,
            "lead " + name,
            canonical,
            FactText.titled(lead.title(), what, rated, lead.colour()),
            lead.name().span()));
  }
}
