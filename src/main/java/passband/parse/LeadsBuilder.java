package passband.parse;

import java.util.List;
import passband.parse.antlr.PassbandParser.*;
import passband.syntax.LeadKind;
import passband.syntax.Tree;
import passband.syntax.Word;

/** From the contexts of a set of leads to its part of the tree. */
final class LeadsBuilder {
  private final Terminals leaves;
  private final ItemBuilder build;

  LeadsBuilder(Terminals leaves, ItemBuilder build) {
    this.leaves = leaves;
    this.build = build;
  }

  Tree.Leads leadSet(LeadsContext leadSet) {
    List<LeadsItemContext> items = leadSet.leadsItem();
    return new Tree.Leads(
        leaves.name(leadSet.leadsHead().name()),
        leaves.optionalText(leadSet.leadsHead().TEXT()),
        build.parts(items, LeadsItemContext::lead, this::lead),
        build.parts(items, LeadsItemContext::allow, build::allow),
        leaves.line(leadSet.leadsHead()));
  }

  private Tree.Lead lead(LeadContext lead) {
    Word colour = lead.COLOUR() == null ? null : leaves.name(lead.name(1));
    return new Tree.Lead(
        lead.LINK() != null
            ? LeadKind.LINK
            : lead.ACCESSORY() != null ? LeadKind.ACCESSORY : LeadKind.LEAD,
        leaves.name(lead.name(0)),
        leaves.optionalText(lead.TEXT()),
        lead.amount() == null ? null : leaves.amount(lead.amount()),
        lead.RATED() == null
            ? null
            : leaves.unknown(
                leaves.word(lead.RATED().getSymbol()), lead.unknown(), leaves.line(lead)),
        colour,
        leaves.line(lead));
  }
}
