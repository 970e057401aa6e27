package passband.compile;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.model.Analyzer;
import passband.model.Device;
import passband.model.Device.Outlet;
import passband.model.Instruments;
import passband.model.Lead;
import passband.model.Terminal;
import passband.plan.Setup;
import passband.plan.Wire;
import passband.resolve.Names;
import passband.resolve.Scope;
import passband.source.Span;
import passband.syntax.LeadKind;
import passband.syntax.TerminalKind;
import passband.syntax.Tree;
import passband.syntax.Word;

/** The setups of a procedure, each made out for an outlet. */
final class Setups {
  private final Device device;
  private final Instruments instruments;
  private final List<Lead> leads;
  private final List<Tree.Setup> trees;
  private final Names names;
  private final Diagnostics diagnostics;
  private final Map<String, Tree.Setup> byName = new HashMap<>();
  private final Set<String> used = new HashSet<>();
  private boolean leadsUnknown;

  Setups(
      List<Tree.Setup> trees,
      Device device,
      Instruments instruments,
      List<Lead> leads,
      Names names,
      Diagnostics diagnostics) {
    this.trees = trees;
    this.names = names;
    this.device = device;
    this.instruments = instruments;
    this.leads = leads;
    this.diagnostics = diagnostics;
    Map<String, Word> seen = new HashMap<>();
    for (Tree.Setup setup : trees) {
      String key =
          setup.name().text() + (setup.analyzer() == null ? "" : " for " + setup.analyzer().text());
      Word first = seen.putIfAbsent(key, setup.name());
      if (first != null) {
        diagnostics
            .say(Code.DUPLICATE_NAME, setup.name().span(), "setup '%s' is declared twice", key)
            .note(first.span(), "first declared here");
      } else if (setup.analyzer() == null) {
        byName.putIfAbsent(setup.name().text(), setup);
      } else if (instruments.include(setup.analyzer().text())) {
        byName.put(setup.name().text(), setup);
      }
    }
  }

  /** A set of leads is not there: what is in none of the others may be in it. */
  void ignoreUnknownLeads() {
    leadsUnknown = true;
  }

  /** Whether a setup of this name is there for one of the instruments; says so when it is not. */
  boolean exists(Word name) {
    for (Tree.Setup setup : trees) {
      if (setup.name().text().equals(name.text())) {
        names.use(name, setup.name()); // for these instruments or others
      }
    }
    if (byName.containsKey(name.text())) {
      return true;
    }
    DiagnosticBuilder said = Scope.unknown(diagnostics, name, "setup", "", byName.keySet());
    for (Tree.Setup setup : trees) {
      if (setup.name().text().equals(name.text()) && setup.analyzer() != null) {
        said.note(setup.name().span(), "it is there for '%s' only", setup.analyzer().text());
      }
    }
    return false;
  }

  /** Records what the setups name that no test is in; nobody is told of their faults. */
  void nameUnused() {
    Setups silent = new Setups(trees, device, instruments, leads, names, new Diagnostics());
    for (Tree.Setup setup : byName.values()) {
      if (!used.contains(setup.name().text())) {
        silent.on(setup.name(), null);
      }
    }
  }

  /** The setup on an outlet; wires with faults are said and left out. */
  Setup on(Word name, @Nullable Outlet outlet) {
    Tree.Setup tree = Objects.requireNonNull(byName.get(name.text()), name.text());
    used.add(name.text());
    List<Wire> wires = new ArrayList<>();
    boolean whole = true;
    for (Tree.Wire wire : tree.wires()) {
      Lead lead = lead(wire);
      List<Terminal> at = new ArrayList<>();
      for (Tree.Ref ref : wire.at()) {
        Terminal one = terminal(ref, outlet, name);
        if (one != null) {
          at.add(one);
        }
      }
      if (lead != null && at.size() == wire.at().size()) {
        addChain(lead, at, wire.span(), wires);
      } else {
        whole = false;
      }
    }
    String title = tree.title() == null ? tree.name().text() : tree.title().text();
    return new Setup(tree.name(), title, wires, whole, tree.span());
  }

  /** From terminal to terminal, first those that carry output: an accessory joins these. */
  private void addChain(Lead lead, List<Terminal> at, Span span, List<Wire> wires) {
    List<Terminal> chain = new ArrayList<>(at);
    if (lead.accessory()) {
      chain.sort(this::byPlace);
    }
    if (chain.size() == 1) {
      wires.add(new Wire(lead, chain.get(0), chain.get(0), span));
    }
    for (int i = 1; i < chain.size(); i++) {
      wires.add(new Wire(lead, chain.get(i - 1), chain.get(i), span));
    }
  }

  /** In which order its terminals are written makes no difference: they go as on the panels. */
  private int byPlace(Terminal one, Terminal other) {
    int place = Integer.compare(place(one), place(other));
    return place != 0 ? place : Integer.compare(number(one), number(other));
  }

  private int number(Terminal terminal) {
    int number = 0;
    for (Outlet outlet : device.outlets()) {
      for (Terminal one : outlet.terminals()) {
        if (one.same(terminal)) {
          return number;
        }
        number++;
      }
    }
    for (Terminal one : instruments.terminals()) {
      if (one.same(terminal)) {
        return number;
      }
      number++;
    }
    return number;
  }

  /** Jacks, what carries output on the generator beside them, contacts last. */
  private static int place(Terminal one) {
    return one.kind() == TerminalKind.JACK ? 0 : one.kind().carriesOutput() ? 1 : 2;
  }

  private @Nullable Lead lead(Tree.Wire wire) {
    for (Lead lead : leads) {
      if (lead.name().text().equals(wire.lead().text())) {
        if (lead.kind() != wire.kind()) {
          sayOther(wire, lead);
          return null;
        }
        names.use(wire.lead(), lead.name());
        return lead;
      }
    }
    if (leadsUnknown) {
      return null; // it may be in the set that is not there, which has been said
    }
    Scope.unknownAmong(
        diagnostics,
        wire.lead(),
        wire.kind().word(),
        " in the procedure's sets of leads",
        leads.stream().filter(l -> l.kind() == wire.kind()).map(Lead::name).toList());
    return null;
  }

  private void sayOther(Tree.Wire wire, Lead lead) {
    String right = lead.link() ? "link" : "connect";
    int start = wire.span().start();
    int end = start + (wire.kind() == LeadKind.LINK ? "link" : "connect").length();
    DiagnosticBuilder said =
        diagnostics
            .say(
                Code.WRONG_KIND,
                wire.lead().span(),
                "'%s' is %s %s",
                wire.lead().text(),
                lead.accessory() ? "an" : "a",
                lead.kind().word())
            .note(lead.name().span(), "it is declared here");
    boolean written = wire.span().start() < wire.lead().span().start();
    if (lead.accessory() || wire.kind() == LeadKind.ACCESSORY || !written) {
      return; // it is the heading's word, or it takes 'at' with terminals in the place of 'from'
      // and 'to', or the other way
    }
    said.hint("write '%s'", right)
        .fix(Fix.replace(new Span(wire.span().file(), start, end), right).asPreferred());
  }

  private @Nullable Terminal terminal(Tree.Ref ref, @Nullable Outlet outlet, Word used) {
    List<Word> parts = ref.parts();
    String first = parts.get(0).text();
    Instruments.Taken taken = parts.size() == 2 ? instruments.find(first) : null;
    if (taken != null) {
      Analyzer instrument = taken.unit();
      names.use(parts.get(0), taken.role());
      return found(
          instrument.terminal(parts.get(1).text()),
          parts.get(1),
          " on the analyzer '" + instrument.name().text() + "'",
          instrument.terminals());
    }
    if (parts.size() == 2 && first.equals("outlet")) {
      if (outlet == null) {
        diagnostics.say(Code.WRONG_KIND, ref.span(), "the test that uses this setup has no outlet");
        return null;
      }
      String where = " on the outlet '" + outlet.name().text() + "'";
      Terminal own = outlet.terminal(parts.get(1).text());
      if (own == null) {
        List<Word> declared = outlet.terminals().stream().map(Terminal::name).toList();
        Scope.unknownAmong(diagnostics, parts.get(1), "terminal", where, declared)
            .note(used.span(), "this test uses the setup on that outlet");
        return null;
      }
      return found(own, parts.get(1), where, outlet.terminals());
    }
    if (parts.size() == 3 && first.equals("device")) {
      return onDevice(parts);
    }
    diagnostics
        .say(Code.WRONG_KIND, ref.span(), "'%s' is not a terminal", ref.span().text())
        .hint(
            "write outlet.NAME, device.OUTLET.NAME or %s.NAME",
            String.join(".NAME, ", instruments.names()));
    return null;
  }

  private @Nullable Terminal onDevice(List<Word> parts) {
    Outlet named = device.outlet(parts.get(1).text());
    if (named == null) {
      List<Word> outlets = device.outlets().stream().map(Outlet::name).toList();
      Scope.unknownAmong(diagnostics, parts.get(1), "outlet", "", outlets);
      return null;
    }
    names.use(parts.get(1), named.name());
    return found(
        named.terminal(parts.get(2).text()),
        parts.get(2),
        " on the outlet '" + named.name().text() + "'",
        named.terminals());
  }

  private @Nullable Terminal found(
      @Nullable Terminal terminal, Word name, String where, List<Terminal> known) {
    if (terminal == null) {
      List<Word> declared = known.stream().map(Terminal::name).toList();
      Scope.unknownAmong(diagnostics, name, "terminal", where, declared);
    } else {
      names.use(name, terminal.name());
    }
    return terminal;
  }
}
