package passband.plan;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.model.Analyzer;
import passband.model.Device;
import passband.model.Instruments;
import passband.model.Lead;
import passband.plan.Fact.Area;
import passband.source.Span;
import passband.syntax.Derive;
import passband.syntax.LimitExpression;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * What a device, an analyzer, a set of leads or a rule says by itself, without a procedure.
 *
 * @param kind the word that declares it
 * @param facts by keys of their own
 * @param parts the places by which a procedure that uses it is known
 */
public record Profile(String kind, Word name, List<Fact> facts, List<Span> parts) {
  /** Copies the lists. */
  public Profile {
    facts = List.copyOf(facts);
    parts = List.copyOf(parts);
  }

  /** A generator. */
  public static Profile of(Device device) {
    FactList facts = new FactList();
    new MeaningOfDevice(facts, Naming.OWN, owner -> true).add(device);
    List<Tree.Allow> allows = new ArrayList<>(device.tree().allows());
    device.modes().forEach(mode -> allows.addAll(mode.tree().allows()));
    return made("device", device.name(), facts, allows, List.of(device.name().span()));
  }

  /** An instrument. */
  public static Profile of(Analyzer analyzer) {
    FactList facts = new FactList();
    new MeaningOfAnalyzer(facts, owner -> true, Instruments.ONLY).add(analyzer);
    return made(
        "analyzer",
        analyzer.name(),
        facts,
        analyzer.tree().allows(),
        List.of(analyzer.name().span()));
  }

  /** A set of leads, in the order that sheets number them in. */
  public static Profile of(Tree.Leads tree, List<Lead> leads) {
    FactList facts = new FactList();
    named(facts, "the set of leads", tree.name(), tree.title());
    new MeaningOfLeads(facts).add(leads);
    List<String> names = new ArrayList<>();
    List<Span> parts = new ArrayList<>();
    for (Lead lead : leads) {
      names.add(lead.name().text());
      parts.add(lead.name().span());
    }
    Span at = tree.name().span();
    facts.add(Fact.order(Area.ORDER, "leads", "the order of the leads", names, at));
    return made("leads", tree.name(), facts, tree.allows(), parts);
  }

  /** A rule that tests share. */
  public static Profile of(Tree.Rule rule) {
    FactList facts = new FactList();
    named(facts, "the rule", rule.name(), rule.title());
    List<String> order = new ArrayList<>();
    List<Span> parts = new ArrayList<>();
    for (Derive derive : rule.derives()) {
      parts.add(derive.span());
      facts.add(derived(derive));
    }
    for (Tree.Accept accept : rule.accepts()) {
      parts.add(accept.span());
      if (accept.quantity() != null && accept.limit() != null) {
        order.add(accept.quantity().text());
        facts.add(accepted(accept));
      }
    }
    Span at = rule.name().span();
    facts.add(Fact.order(Area.ORDER, "accepts", "the order of what is accepted", order, at));
    return made("rule", rule.name(), facts, rule.allows(), parts);
  }

  private static Fact derived(Derive derive) {
    String title = derive.title() == null ? derive.name().text() : derive.title().text();
    String over = derive.over() == null ? "" : " over " + derive.over().text();
    return Fact.of(
        Area.CALCULATION,
        "derive/" + derive.name(),
        "derive " + derive.name(),
        Canonical.of(
            title, Formula.exact(derive.value()) + over, Formula.amount(derive.resolution(), true)),
        FactText.titled(title, Formula.text(derive.value()) + over)
            + ", resolution "
            + Formula.amount(derive.resolution(), false),
        derive.span());
  }

  private static Fact accepted(Tree.Accept accept) {
    Word quantity = Objects.requireNonNull(accept.quantity());
    LimitExpression limit = Objects.requireNonNull(accept.limit());
    String as = accept.readAs() == null ? "" : ", read as " + accept.readAs();
    String by = accept.readBy() == null ? "" : ", read by " + accept.readBy();
    return Fact.of(
            Area.RULE,
            "accept/" + quantity,
            "accept " + quantity,
            Canonical.of(quantity, LimitText.exact(limit), accept.readAs(), accept.readBy()),
            quantity + " " + LimitText.of(limit) + as + by,
            accept.span())
        .with(limit);
  }

  private static void named(FactList facts, String subject, Word name, @Nullable Word title) {
    String shown = title == null ? name.text() : title.text();
    facts.add(
        Fact.of(
            Area.NAME,
            "name",
            subject,
            Canonical.of(name, shown),
            FactText.titled(shown, name.text()),
            name.span()));
  }

  private static Profile made(
      String kind, Word name, FactList facts, List<Tree.Allow> allows, List<Span> parts) {
    for (Tree.Allow allow : allows) {
      String code = allow.code().text();
      facts.add(Fact.text(Area.ALLOW, "allow/" + code, code, allow.reason().text(), allow.span()));
    }
    return new Profile(kind, name, facts.list(), parts);
  }

  /** SHA-256 over its meaning, in lower-case hexadecimal. */
  public String digest() {
    return Meaning.of(this).digest();
  }

  /** Whether procedures use it, by what they use. */
  public boolean isUsed(Set<Span> used) {
    return !Collections.disjoint(used, parts);
  }

  /** The names and lines of the profiles and rules that procedures use. */
  public static Set<Span> used(List<Plan> plans) {
    Set<Span> used = new HashSet<>();
    for (Plan plan : plans) {
      used.add(plan.device().name().span());
      plan.instruments().declarations().forEach(one -> used.add(one.name().span()));
      plan.leads().forEach(lead -> used.add(lead.name().span()));
      plan.limits().forEach(limit -> used.add(limit.rule().span()));
    }
    return used;
  }
}
