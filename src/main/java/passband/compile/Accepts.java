package passband.compile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.limit.Conversion;
import passband.limit.ReadQuantity;
import passband.limit.RowValues;
import passband.limit.Value;
import passband.model.Analyzer;
import passband.model.Device;
import passband.model.Instruments;
import passband.model.Reader;
import passband.quantity.Dimension;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.resolve.Scope;
import passband.resolve.Values;
import passband.syntax.Derive;
import passband.syntax.Expression;
import passband.syntax.NamesInLimit;
import passband.syntax.Tree;
import passband.syntax.Variables;
import passband.syntax.Word;

/**
 * What a test accepts: its own lines and those of the rules it names, each with the quantities it
 * is about.
 */
final class Accepts {
  /**
   * One acceptance: the quantity of the rule, the quantity that is read, what shows it, and what is
   * read when it is swept or derived.
   */
  record Accepted(
      Tree.Accept tree,
      QuantityKind kind,
      QuantityKind read,
      Reader reader,
      @Nullable ReadQuantity workedOut) {}

  private final Device device;
  private final Instruments instruments;
  private final Scope scope;
  private final Diagnostics diagnostics;
  private final Values values;

  Accepts(Device device, Instruments instruments, Scope scope, Diagnostics diagnostics) {
    this.device = device;
    this.instruments = instruments;
    this.scope = scope;
    this.diagnostics = diagnostics;
    this.values = new Values(diagnostics);
  }

  /**
   * All acceptances of a test; those with faults are said and left out.
   *
   * @param columns those of one of its points
   */
  List<Accepted> of(Tree.Test test, RowValues columns) {
    Map<String, ReadQuantity> workedOut = workedOut(test, columns);
    Map<String, Word> declared = workedOut(test);
    List<Accepted> accepted = new ArrayList<>();
    for (Tree.Accept line : lines(test)) {
      Word quantity = quantity(line);
      scope.names().use(quantity, declared.get(quantity.text()));
      Accepted one = accepted(line, workedOut);
      if (one != null && distinct(one, accepted)) {
        accepted.add(one);
      }
    }
    return accepted;
  }

  /** The names that the limits of a test use, its rules' among them. */
  Set<String> inLimits(Tree.Test test) {
    Set<String> names = new TreeSet<>();
    for (Tree.Accept line : test.accepts()) {
      names.addAll(NamesInLimit.of(line.limit()));
      for (Tree.Rule rule : line.by() == null ? List.<Tree.Rule>of() : scope.all(Tree.Rule.class)) {
        if (line.by() != null && rule.name().text().equals(line.by().text())) {
          rule.accepts().forEach(inner -> names.addAll(NamesInLimit.of(inner.limit())));
        }
      }
    }
    return names;
  }

  private List<Tree.Accept> lines(Tree.Test test) {
    List<Tree.Accept> lines = new ArrayList<>();
    for (Tree.Accept line : test.accepts()) {
      if (line.by() == null) {
        lines.add(line);
        continue;
      }
      Tree.Rule rule = scope.find(Tree.Rule.class, "rule", line.by());
      if (rule != null) {
        lines.addAll(lines(rule, diagnostics));
      }
    }
    return lines;
  }

  /** A rule's own limits; it takes none from another. */
  static List<Tree.Accept> lines(Tree.Rule rule, Diagnostics diagnostics) {
    List<Tree.Accept> lines = new ArrayList<>();
    for (Tree.Accept line : rule.accepts()) {
      if (line.by() == null) {
        lines.add(line);
      } else {
        diagnostics.say(Code.WRONG_KIND, line.span(), "'accept by' is not allowed inside a rule");
      }
    }
    return lines;
  }

  private boolean distinct(Accepted one, List<Accepted> before) {
    for (Accepted other : before) {
      if (other.read.name().equals(one.read.name())) {
        diagnostics
            .say(
                Code.REPEATED_ITEM,
                one.tree.span(),
                "this test already has an 'accept' line for '%s'",
                one.read.name())
            .note(other.tree.span(), "the first is here")
            .hint("one reading has one pair of limits: put the second into a test of its own");
        return false;
      }
    }
    return true;
  }

  private static Word quantity(Tree.Accept line) {
    return Objects.requireNonNull(line.quantity(), "a line by a rule was replaced by the rule's");
  }

  private @Nullable Accepted accepted(Tree.Accept line, Map<String, ReadQuantity> workedOut) {
    Word quantity = quantity(line);
    ReadQuantity own = workedOut.get(quantity.text());
    if (own == null && workedOut.containsKey(quantity.text())) {
      return null;
    }
    QuantityKind kind = own != null ? own.kind() : values.quantity(quantity);
    if (kind == null) {
      return null;
    }
    if (line.readAs() == null) {
      return accepted(line, kind, kind, own);
    }
    QuantityKind read = values.quantity(line.readAs());
    if (read == null) {
      return null;
    }
    if (own != null
        || !(Conversion.exists(kind.name(), read.name()) || kind.name().equals(read.name()))) {
      diagnostics
          .say(
              Code.UNIT_MISMATCH,
              line.readAs().span(),
              "%s cannot be read as %s",
              kind.name(),
              read.name())
          .hint("through the load, power, current and voltage can be read as one another");
      return null;
    }
    return accepted(line, kind, read, null);
  }

  private @Nullable Accepted accepted(
      Tree.Accept line, QuantityKind kind, QuantityKind read, @Nullable ReadQuantity workedOut) {
    Reader reader = workedOut != null ? device : reader(line, read.name());
    return reader == null ? null : new Accepted(line, kind, read, reader, workedOut);
  }

  // ---- what shows a reading ----

  /** Whether an instrument shows something that is accepted. */
  boolean reads(Analyzer unit, List<Accepted> accepted, List<Input> inputs) {
    for (Input one : inputs) {
      if (one.reader.role().equals(unit.role())) {
        return true;
      }
    }
    for (Accepted one : accepted) {
      if (one.workedOut == null && one.reader.role().equals(unit.role())) {
        return true;
      }
    }
    return false;
  }

  private @Nullable Reader reader(Tree.Accept line, String quantity) {
    Word by = line.readBy();
    if (by == null) {
      return onlyReader(quantity, line.readAs() == null ? quantity(line) : line.readAs());
    }
    if (by.text().equals(Instruments.DEVICE)) {
      return device;
    }
    Instruments.Taken taken = instruments.find(by.text());
    if (taken == null) {
      List<String> known = new ArrayList<>(instruments.names());
      known.add(Instruments.DEVICE);
      Scope.unknown(diagnostics, by, "role", known);
      return null;
    }
    scope.names().use(by, taken.role());
    return taken.unit();
  }

  /**
   * The one instrument that measures a quantity; where none does, the first, of which that is said
   * later; null, with the fault said at the place, where several do.
   */
  @Nullable Reader onlyReader(String quantity, Word where) {
    List<Analyzer> measuring = instruments.measuring(quantity);
    if (measuring.size() < 2) {
      return measuring.isEmpty() ? instruments.units().get(0) : measuring.get(0);
    }
    List<String> roles = new ArrayList<>();
    measuring.forEach(unit -> roles.add(unit.role()));
    DiagnosticBuilder said =
        diagnostics
            .say(Code.READER_AMBIGUOUS, where.span(), "several instruments measure %s", quantity)
            .hint("say which of them reads it: read by %s", String.join(" or ", roles));
    for (Analyzer unit : measuring) {
      Analyzer.Measure measure = unit.measure(quantity);
      if (measure != null) {
        said.note(measure.span(), "'%s' does", unit.role());
      }
    }
    return null;
  }

  // ---- swept and derived quantities ----

  /** Where the swept and derived quantities of a test are declared, by name. */
  static Map<String, Word> workedOut(Tree.Test test) {
    Map<String, Word> declared = new LinkedHashMap<>();
    if (test.sweep() != null) {
      declared.put(test.sweep().as().text(), test.sweep().as());
    }
    test.derives().forEach(d -> declared.put(d.name().text(), d.name()));
    return declared;
  }

  /** By name; null for one with faults, which have been said. */
  private Map<String, ReadQuantity> workedOut(Tree.Test test, RowValues columns) {
    Map<String, ReadQuantity> workedOut = new LinkedHashMap<>();
    if (test.sweep() != null) {
      workedOut.put(test.sweep().as().text(), swept(test.sweep()));
    }
    Map<String, Word> declared = new LinkedHashMap<>();
    for (Derive derive : test.derives()) {
      Word first = declared.putIfAbsent(derive.name().text(), derive.name());
      if (first == null) {
        workedOut.put(derive.name().text(), derived(derive, test, columns));
      } else if (first != derive.name()) {
        sayTwice(derive, first);
      }
    }
    return workedOut;
  }

  private void sayTwice(Derive derive, Word first) {
    diagnostics
        .say(
            Code.DUPLICATE_NAME,
            derive.name().span(),
            "'%s' is calculated twice in one test",
            derive.name().text())
        .note(first.span(), "the first is here");
  }

  private @Nullable ReadQuantity swept(Tree.Sweep sweep) {
    Dimension dimension =
        sweep.what().text().equals("load") ? Dimension.RESISTANCE : dimensionOf(sweep.what());
    if (dimension == null) {
      return null;
    }
    Rational from = values.si(sweep.from(), dimension, "the start of the sweep");
    Rational to = values.si(sweep.to(), dimension, "the end of the sweep");
    Rational step = values.positive(sweep.step(), dimension, "the step of the sweep");
    if (from == null || to == null || step == null) {
      return null;
    }
    if (sweep.up() ? from.compareTo(to) >= 0 : from.compareTo(to) <= 0) {
      DiagnosticBuilder said =
          diagnostics.say(
              Code.REVERSED_RANGE,
              sweep.span(),
              sweep.up()
                  ? "a sweep 'up' must end above its start"
                  : "a sweep 'down' must end below its start");
      if (!from.equals(to)) {
        said.fix(Values.swapped(sweep.from(), sweep.to()));
      }
      return null;
    }
    String name = sweep.as().text();
    QuantityKind kind = new QuantityKind(name, printed(name), dimension, true);
    return ReadQuantity.workedOut(
        kind,
        printed(name),
        Objects.requireNonNull(values.unitOf(sweep.step()), "the step has a value"),
        step);
  }

  private @Nullable Dimension dimensionOf(Word name) {
    QuantityKind kind = values.quantity(name);
    return kind == null ? null : kind.dimension();
  }

  private @Nullable ReadQuantity derived(Derive derive, Tree.Test test, RowValues columns) {
    SampleReadings samples = new SampleReadings(columns, instruments);
    Value sample =
        derive.over() == null
            ? samples.of(derive, diagnostics)
            : SampleReadings.compared(
                derive, readable(test), workedOut(test), scope.names(), diagnostics);
    if (sample == null) {
      return null;
    }
    Rational resolution =
        values.positive(derive.resolution(), sample.dimension(), "the resolution");
    if (resolution == null) {
      return null;
    }
    String name = derive.name().text();
    String title = derive.title() == null ? printed(name) : derive.title().text();
    QuantityKind kind = new QuantityKind(name, title, sample.dimension(), false);
    return ReadQuantity.workedOut(
        kind,
        title,
        Objects.requireNonNull(values.unitOf(derive.resolution()), "it has a value"),
        resolution);
  }

  /** What a test can read: what instruments measure, and what it sweeps. */
  private List<QuantityKind> readable(Tree.Test test) {
    List<QuantityKind> kinds = new ArrayList<>();
    instruments.measures().forEach(m -> kinds.add(m.quantity()));
    ReadQuantity swept =
        test.sweep() == null
            ? null
            : new Accepts(device, instruments, scope, new Diagnostics()).swept(test.sweep());
    if (swept != null) {
      kinds.add(swept.kind());
    }
    return kinds;
  }

  private static String printed(String name) {
    String words = name.replace('-', ' ');
    return Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }

  /**
   * What is read only to work something else out; what has faults is said and left out.
   *
   * @param accepted what is read anyway
   */
  List<Input> inputs(Tree.Test test, List<Accepted> accepted) {
    Map<String, Word> needed = new LinkedHashMap<>();
    for (Derive derive : test.derives()) {
      inputs(derive.value()).forEach(name -> needed.putIfAbsent(name, derive.name()));
    }
    accepted.forEach(one -> needed.remove(one.read.name()));
    needed.remove("load");
    List<Input> inputs = new ArrayList<>();
    needed.forEach(
        (name, where) -> {
          Reader reader = onlyReader(name, where);
          Analyzer.Measure measure = reader == null ? null : reader.measure(name);
          if (reader != null && measure != null) {
            inputs.add(new Input(measure, reader));
          }
        });
    return inputs;
  }

  /** A quantity that is read to work another out, and what shows it. */
  record Input(Analyzer.Measure measure, Reader reader) {}

  /** The measured quantities that a derived one is worked out from, in alphabetical order. */
  private static Set<String> inputs(Expression expression) {
    Set<String> names = new TreeSet<>(Variables.of(expression));
    names.removeIf(n -> QuantityKind.find(n) == null);
    return new LinkedHashSet<>(names);
  }
}
