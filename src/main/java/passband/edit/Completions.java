package passband.edit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.model.Instruments;
import passband.parse.CursorContext;
import passband.quantity.QuantityKind;
import passband.quantity.Unit;
import passband.resolve.Included;
import passband.syntax.Conditions;
import passband.syntax.SharedPart;
import passband.syntax.Step;
import passband.syntax.Tree;
import passband.syntax.Word;
import passband.words.Language;

/** Gathers what may be written at a place. */
final class Completions {
  private static final List<String> LIMITS =
      List.of("within", "from output", "from stated", "from device", "from", "at most", "at least");
  private static final List<String> COLUMNS =
      List.of("mode", "setting", "load", "stated", "target", "activation", "repeat");

  private final CursorContext place;
  private final Map<String, Completion> found = new LinkedHashMap<>();
  private final List<Tree.Declaration> sight = new ArrayList<>();
  private final Tree.@Nullable Procedure procedure;
  private final Tree.@Nullable Device device;
  private final Map<String, Tree.Analyzer> analyzers = new LinkedHashMap<>();

  Completions(Analysis analysis, CursorContext place) {
    this.place = place;
    analysis.visible().forEach(f -> sight.addAll(f.declarations()));
    this.procedure = whole();
    String ofDevice = place.nameOf("device");
    this.device =
        declared(
            Tree.Device.class,
            ofDevice != null ? ofDevice : procedure == null ? null : text(procedure.device()));
    takeAnalyzers(place.nameOf("analyzer"));
  }

  /** The procedure, or the part, with what it includes. */
  private Tree.@Nullable Procedure whole() {
    SharedPart part = declared(SharedPart.class, place.nameOf("part"));
    Tree.Procedure lines =
        part == null ? declared(Tree.Procedure.class, place.nameOf("procedure")) : part.lines();
    return lines == null
        ? null
        : Included.in(lines, name -> declared(SharedPart.class, name.text()), new Diagnostics())
            .whole();
  }

  /** Those of the procedure by their roles; inside a declaration its own. */
  private void takeAnalyzers(@Nullable String own) {
    if (own != null) {
      take(Instruments.ONLY, own);
    } else if (procedure != null) {
      for (Tree.Instrument one : procedure.instruments()) {
        take(one.role() == null ? Instruments.ONLY : one.role().text(), one.name().text());
      }
    }
  }

  private void take(String role, String name) {
    Tree.Analyzer found = declared(Tree.Analyzer.class, name);
    if (found != null) {
      analyzers.put(role, found);
    }
  }

  private static @Nullable String text(@Nullable Word word) {
    return word == null ? null : word.text();
  }

  private <D extends Tree.Declaration> @Nullable D declared(Class<D> type, @Nullable String name) {
    return sight.stream()
        .filter(d -> type.isInstance(d) && d.name().text().equals(name))
        .map(type::cast)
        .findFirst()
        .orElse(null);
  }

  List<Completion> list() {
    return List.copyOf(found.values());
  }

  private void add(String label, String kind, String detail) {
    found.putIfAbsent(
        label, new Completion(label, kind, detail == null ? "" : detail, place.typedFrom()));
  }

  private void add(String kind, Word name, @Nullable Word title) {
    add(name.text(), kind, title == null ? kind : kind + " — " + title.text());
  }

  void propose() {
    List<String> before = place.before();
    String last = before.isEmpty() ? "" : before.get(before.size() - 1);
    if (last.matches("\\d.*")) {
      units();
    } else if (place.header() != null) {
      cell(last);
    } else if (before.isEmpty()) {
      lead();
    } else {
      inLine(before, last);
    }
  }

  private void units() {
    for (Unit unit : new DimensionAtCursor(place, device).units()) {
      add(unit.symbol(), "unit", "unit of " + unit.dimension());
    }
    add("to", "keyword", "");
    add("step", "keyword", "");
  }

  private void lead() {
    for (String word : place.leading()) {
      LanguageLine line = LanguageLine.find(place.block(), word);
      add(word, "keyword", line == null ? "" : line.form());
    }
    if (place.block().equals("mode")) {
      quantities();
    }
  }

  private void quantities() {
    for (QuantityKind kind : QuantityKind.all()) {
      add(kind.name(), "quantity", kind.printed());
    }
  }

  // ---- tables ----

  private void cell(String last) {
    List<String> header = place.header();
    if (within("setups")) {
      wiring().cell(header == null ? List.of() : header, place.before(), last);
      return;
    }
    if (header == null || header.isEmpty()) {
      if (last.equals("/")) {
        units();
      } else if (last.equals("stated")) {
        quantities();
      } else {
        COLUMNS.forEach(c -> add(c, "column", "a column"));
        if (ofTests()) {
          Conditions.COLUMNS.forEach(c -> add(c, "column", "in the first row of each test"));
        }
        settings().forEach(s -> add("setting", s.name(), s.title()));
      }
      return;
    }
    List<String> columns = List.of(String.join(" ", header).split(" \\| "));
    String column = place.column() < columns.size() ? columns.get(place.column()) : "";
    String name = column.replaceFirst("[ /].*", "");
    if (name.equals("mode")) {
      modes();
    } else if (ofTests() && Conditions.COLUMNS.contains(name)) {
      wholeTest(name, last);
    } else if (name.equals("load")) {
      ProfileCompletions.terminations(this::add);
    } else if (name.equals("activation")) {
      ProfileCompletions.contacts(device, this::add);
    } else if (name.equals("stated")) {
      add("at most", "keyword", "");
      add("at least", "keyword", "");
      add("to", "keyword", "");
    } else {
      options(name);
    }
  }

  /** Whether the table is of several tests. */
  private boolean ofTests() {
    return within("tests");
  }

  /** Whether the block around the innermost one is of this kind. */
  private boolean within(String word) {
    List<List<String>> blocks = place.blocks();
    return blocks.size() > 1 && blocks.get(blocks.size() - 2).get(0).equals(word);
  }

  private boolean inTest() {
    return place.block().equals("test") || place.block().equals("tests");
  }

  /** What a cell says of a whole test. */
  private void wholeTest(String column, String last) {
    List<String> before = place.before();
    List<String> cell = new ArrayList<>(List.of(column));
    cell.addAll(before.subList(before.lastIndexOf("|") + 1, before.size()));
    switch (column) {
      case "outlet" -> outlets();
      case "setup" -> setups();
      case "inside" -> states();
      case "output" -> List.of("off", "inhibited").forEach(w -> add(w, "keyword", ""));
      case "accept" -> accept(cell, last);
      case "when" -> when(cell);
      default -> {}
    }
  }

  private void setups() {
    if (procedure != null) {
      procedure.setups().forEach(s -> add("setup", s.name(), s.title()));
    }
  }

  private List<Tree.ExtraSetting> settings() {
    List<Tree.ExtraSetting> all = new ArrayList<>();
    if (device != null) {
      all.addAll(device.settings());
    }
    analyzers.values().forEach(one -> all.addAll(one.settings()));
    return all;
  }

  private void options(String setting) {
    for (Tree.ExtraSetting one : settings()) {
      if (one.name().text().equals(setting) && one.options() != null) {
        one.options().forEach(o -> add("option", o.name(), o.title()));
      }
    }
  }

  private void modes() {
    if (device != null) {
      device.modes().forEach(m -> add("mode", m.name(), m.title()));
    }
  }

  // ---- the rest of a line ----

  private void inLine(List<String> before, String last) {
    String lead = before.get(0);
    if (last.equals(".")) {
      wiring().dotted(before);
      return;
    }
    switch (lead) {
      case "allow" -> {
        if (before.size() == 1) {
          TestCompletions.codes(this::add);
        } else {
          add("because", "keyword", "the reason, which is printed");
        }
      }
      case "accept" -> accept(before, last);
      case "output" -> limit(before, 1);
      case "device" -> all(Tree.Device.class);
      case "analyzer" -> all(Tree.Analyzer.class);
      case "leads" -> all(Tree.Leads.class);
      case "include" -> all(SharedPart.class);
      case "setup" -> {
        if (inTest()) {
          setups();
        } else if (last.equals("for")) {
          all(Tree.Analyzer.class);
        }
      }
      case "outlet", "mode" -> {
        if (last.equals("on") || last.equals(",") || last.equals("through") || inTest()) {
          outlets();
        }
      }
      case "inside" -> states();
      case "connect", "link" -> wiring().line(before, last);
      case "perform" -> actions();
      case "adjust" -> tests();
      case "measure" -> {
        if (before.size() == 1) {
          quantities();
        }
      }
      case "setting" -> quantities();
      case "derive" -> {
        if (!last.equals("over")) {
          quantities();
        }
        TestCompletions.derive(last, this::add);
      }
      case "decision" ->
          List.of("simple", "guarded", "managed", "risk").forEach(w -> add(w, "keyword", ""));
      case "language" ->
          Language.all().forEach(one -> add(one.code(), "language", one.of("language")));
      case "order" -> List.of("by outlet", "by test").forEach(w -> add(w, "keyword", ""));
      case "each" -> TestCompletions.each(last, this::add);
      case "record" -> record(before, last);
      case "when" -> when(before);
      default -> {
        if (List.of("mode", "outlet", "device").contains(place.block()) && before.size() == 1) {
          limit(before, 0);
        }
      }
    }
    new ProfileCompletions(place, device, analyzers.values(), this::add).inLine(lead, last);
  }

  private void record(List<String> before, String last) {
    if (last.equals("in")) {
      units();
    } else if (before.size() > 2) {
      add("in", "keyword", "a unit");
      LIMITS.stream()
          .filter(
              l -> !l.equals("from output") && !l.equals("from stated") && !l.equals("from device"))
          .forEach(l -> add(l, "keyword", "a limit"));
    }
  }

  /** The choices that sections ask; after 'is' the outcomes of the one that is named. */
  private void when(List<String> before) {
    for (Step step : procedure == null ? List.<Step>of() : procedure.steps()) {
      if (step instanceof Step.Choose choose) {
        if (before.size() == 1) {
          add("choice", choose.name(), choose.text());
        } else if (before.size() > 2 && before.get(1).equals(choose.name().text())) {
          choose
              .outcomes()
              .forEach(o -> add("\"" + o.text() + "\"", "outcome", choose.text().text()));
        }
      }
    }
    if (before.size() == 2) {
      add("is", "keyword", "the outcomes");
    }
  }

  private void accept(List<String> before, String last) {
    if (before.size() == 1) {
      quantities();
      own();
      add("by", "keyword", "a rule");
    } else if (last.equals("by")) {
      all(Tree.Rule.class);
    } else if (last.equals("as") || last.equals("read")) {
      quantities();
    } else if (last.equals(",")) {
      add("read as", "keyword", "");
      add("whichever is greater", "keyword", "");
      add("whichever is smaller", "keyword", "");
    } else {
      limit(before, 1);
    }
  }

  /** Quantities that the test itself makes. */
  private void own() {
    Tree.Test test = test();
    if (test != null) {
      test.derives().forEach(d -> add("quantity", d.name(), d.title()));
      if (test.sweep() != null && test.sweep().as() != null) {
        add("quantity", test.sweep().as(), null);
      }
    }
  }

  private Tree.@Nullable Test test() {
    String name = place.nameOf("test");
    return procedure == null
        ? null
        : procedure.tests().stream()
            .filter(t -> t.name().text().equals(name))
            .findFirst()
            .orElse(null);
  }

  private void limit(List<String> before, int words) {
    if (before.size() == words) {
      quantities();
    } else if (before.size() == words + 1) {
      LIMITS.forEach(l -> add(l, "keyword", "a limit"));
    } else {
      List.of("of setting", "or").forEach(l -> add(l, "keyword", ""));
      COLUMNS.subList(1, 3).forEach(c -> add(c, "column", "of the point"));
    }
  }

  private <D extends Tree.Declaration> void all(Class<D> type) {
    sight.stream().filter(type::isInstance).forEach(d -> add(d.name().text(), d.kind(), d.kind()));
  }

  private void outlets() {
    if (device != null) {
      device.outlets().forEach(o -> add("outlet", o.name(), o.title()));
    }
  }

  private void states() {
    if (device != null) {
      device
          .states()
          .forEach(
              s ->
                  add(
                      "device." + s.name().text(),
                      "state",
                      s.title() == null ? "" : s.title().text()));
    }
  }

  private void actions() {
    if (device != null) {
      device.actions().forEach(a -> add("action", a.name(), a.text()));
    }
    for (Tree.Analyzer one : analyzers.values()) {
      one.actions().forEach(a -> add("action", a.name(), a.text()));
    }
  }

  private void tests() {
    if (procedure != null) {
      procedure.tests().forEach(t -> add("test", t.name(), t.title()));
    }
    add("affects", "keyword", "");
  }

  private WiringCompletions wiring() {
    List<Tree.Lead> leads = new ArrayList<>();
    for (Word set : procedure == null ? List.<Word>of() : procedure.leads()) {
      Tree.Leads declared = declared(Tree.Leads.class, set.text());
      leads.addAll(declared == null ? List.of() : declared.leads());
    }
    return new WiringCompletions(leads, device, analyzers, this::add);
  }
}
