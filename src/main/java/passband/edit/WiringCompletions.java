package passband.edit;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.syntax.LeadKind;
import passband.syntax.Tree;

/** What may be written of leads and terminals: on a line of a setup, in a table of setups. */
final class WiringCompletions {
  private final List<Tree.Lead> leads;
  private final Tree.@Nullable Device device;
  private final Map<String, Tree.Analyzer> analyzers;
  private final ProfileCompletions.Taker found;

  /**
   * @param analyzers by role
   */
  WiringCompletions(
      List<Tree.Lead> leads,
      Tree.@Nullable Device device,
      Map<String, Tree.Analyzer> analyzers,
      ProfileCompletions.Taker found) {
    this.leads = leads;
    this.device = device;
    this.analyzers = analyzers;
    this.found = found;
  }

  /** After the words of a line, {@code connect LEAD from TERMINAL to TERMINAL}. */
  void line(List<String> before, String last) {
    if (before.size() == 1) {
      leads(before.get(0).equals("link"));
    } else if (List.of("from", "to", "at", ",").contains(last)) {
      ends();
    } else {
      keywords("from", "to", "at");
    }
  }

  /** In the heading of a table of setups, and in its cells. */
  void cell(List<String> header, List<String> before, String last) {
    List<String> cell = before.subList(before.lastIndexOf("|") + 1, before.size());
    if (last.equals(".")) {
      dotted(before);
    } else if (!header.isEmpty() && (cell.isEmpty() || List.of("to", ",").contains(last))) {
      ends();
    } else if (!header.isEmpty()) {
      keywords("to");
    } else if (cell.isEmpty()) {
      found.take("setup", "column", "NAME \"TITLE\" of the setup in each row");
      keywords("connect", "link");
    } else {
      leads(last.equals("link"));
    }
  }

  private void leads(boolean link) {
    leads.stream()
        .filter(lead -> (lead.kind() == LeadKind.LINK) == link)
        .forEach(lead -> take(lead.kind().word(), lead.name().text(), lead.title()));
  }

  private void ends() {
    List.of("outlet", "device")
        .forEach(word -> found.take(word, "keyword", "and a terminal of it"));
    analyzers.keySet().forEach(role -> found.take(role, "role", "and a jack of it"));
  }

  private void keywords(String... words) {
    List.of(words).forEach(word -> found.take(word, "keyword", ""));
  }

  /** After a point: what the word before it owns. */
  void dotted(List<String> before) {
    String owner = before.size() < 2 ? "" : before.get(before.size() - 2);
    Tree.Analyzer instrument = analyzers.get(owner);
    if (instrument != null) {
      instrument.terminals().forEach(this::terminal);
    } else if (owner.equals("device") && before.get(0).equals("inside")) {
      if (device != null) {
        device.states().forEach(s -> take("state", s.name().text(), s.title()));
      }
    } else if (owner.equals("device")) {
      if (device != null) {
        device.outlets().forEach(o -> take("outlet", o.name().text(), o.title()));
      }
    } else if (device != null) {
      for (Tree.Outlet outlet : device.outlets()) {
        if (owner.equals("outlet") || owner.equals(outlet.name().text())) {
          outlet.terminals().forEach(this::terminal);
        }
      }
    }
  }

  private void terminal(Tree.Terminal terminal) {
    take(terminal.kind().word(), terminal.name().text(), terminal.title());
  }

  private void take(String kind, String name, passband.syntax.@Nullable Word title) {
    found.take(name, kind, title == null ? kind : kind + " — " + title.text());
  }
}
