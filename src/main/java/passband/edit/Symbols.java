package passband.edit;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import passband.library.Library;
import passband.source.SourceFile;
import passband.source.Span;
import passband.syntax.Expression;
import passband.syntax.LimitExpression;
import passband.syntax.Step;
import passband.syntax.Tree;
import passband.syntax.Word;

/** Every place in the files of a library where something is declared or named. */
public final class Symbols {
  private static final Pattern PLACEHOLDER = Pattern.compile("\\{([^{}]+)\\}");

  /** One place. */
  public record Occurrence(Symbol symbol, Span span, boolean declaration) {}

  private final List<Occurrence> found = new ArrayList<>();

  /** The places in all files of a library. */
  public Symbols(Library library) {
    for (Tree.File file : library.files()) {
      FileWalk walk = new FileWalk(library.visibleFrom(file));
      file.declarations().forEach(walk::declaration);
    }
  }

  /** All places. */
  public List<Occurrence> all() {
    return found;
  }

  /** The places at an offset: several when one name stands for several things. */
  public List<Occurrence> at(SourceFile file, int offset) {
    return found.stream()
        .filter(o -> o.span.file().path().equals(file.path()))
        .filter(o -> o.span.touches(offset))
        .toList();
  }

  /** All places of one thing, in order. */
  public List<Span> places(Symbol symbol) {
    return found.stream()
        .filter(o -> o.symbol.equals(symbol))
        .map(Occurrence::span)
        .distinct()
        .sorted()
        .toList();
  }

  /** Walks the declarations of a file with what is in sight there. */
  private final class FileWalk {
    private final List<Tree.Declaration> sight = new ArrayList<>();

    FileWalk(List<Tree.File> visible) {
      visible.forEach(f -> sight.addAll(f.declarations()));
    }

    private <D extends Tree.Declaration> D find(Class<D> type, Word name) {
      if (name == null) {
        return null;
      }
      for (Tree.Declaration one : sight) {
        if (type.isInstance(one) && one.name().text().equals(name.text())) {
          return type.cast(one);
        }
      }
      return null;
    }

    private void declare(String kind, Word name, Word title) {
      if (name != null) {
        found.add(new Occurrence(new Symbol(kind, name, title), name.span(), true));
      }
    }

    /** Names something, if it is there. */
    private <T> void refer(Word word, String kind, List<T> among, Function<T, Word> name) {
      if (word == null) {
        return;
      }
      for (T one : among) {
        if (name.apply(one) != null && name.apply(one).text().equals(word.text())) {
          found.add(new Occurrence(new Symbol(kind, name.apply(one), null), word.span(), false));
        }
      }
    }

    void declaration(Tree.Declaration one) {
      if (one instanceof Tree.Device device) {
        device(device);
      } else if (one instanceof Tree.Analyzer analyzer) {
        analyzer(analyzer);
      } else if (one instanceof Tree.Leads leads) {
        declare("leads", leads.name(), leads.title());
        leads.leads().forEach(l -> declare(l.link() ? "link" : "lead", l.name(), l.title()));
      } else if (one instanceof Tree.Rule rule) {
        declare("rule", rule.name(), rule.title());
      } else if (one instanceof Tree.Procedure procedure) {
        new ProcedureWalk(this, procedure).walk();
      }
    }

    private void device(Tree.Device device) {
      declare("device", device.name(), device.title());
      for (Tree.Outlet outlet : device.outlets()) {
        declare("outlet", outlet.name(), outlet.title());
        outlet.terminals().forEach(t -> declare(t.kind().word(), t.name(), t.title()));
      }
      for (Tree.Mode mode : device.modes()) {
        declare("mode", mode.name(), mode.title());
        mode.outlets().forEach(o -> outlet(o, device));
        outlet(mode.through(), device);
        for (Tree.Ref by : mode.activateBy()) {
          Word contact = by.parts().get(by.parts().size() - 1);
          if (by.parts().size() > 1) {
            outlet(by.parts().get(0), device);
          }
          device.outlets().stream()
              .filter(
                  o ->
                      by.parts().size() > 1
                          ? o.name().text().equals(by.parts().get(0).text())
                          : mode.outlets().stream().anyMatch(m -> m.text().equals(o.name().text())))
              .forEach(o -> terminal(contact, o.terminals()));
        }
      }
      device.actions().forEach(a -> declare("action", a.name(), null));
      device.states().forEach(s -> declare("state", s.name(), s.title()));
      device.settings().forEach(s -> declare("setting", s.name(), s.title()));
    }

    private void analyzer(Tree.Analyzer analyzer) {
      declare("analyzer", analyzer.name(), analyzer.title());
      analyzer.terminals().forEach(t -> declare(t.kind().word(), t.name(), t.title()));
      for (Tree.LoadBank load : analyzer.loads()) {
        declare("load", load.name(), null);
        jack(load.from(), analyzer);
        jack(load.to(), analyzer);
      }
      for (Tree.Measure measure : analyzer.measures()) {
        jack(measure.from(), analyzer);
        jack(measure.to(), analyzer);
      }
      analyzer.actions().forEach(a -> declare("action", a.name(), null));
      analyzer.settings().forEach(s -> declare("setting", s.name(), s.title()));
    }

    private void jack(Tree.Ref ref, Tree.Analyzer analyzer) {
      if (ref != null && !ref.parts().isEmpty()) {
        terminal(ref.parts().get(ref.parts().size() - 1), analyzer.terminals());
      }
    }

    private void outlet(Word name, Tree.Device device) {
      if (device != null) {
        refer(name, "outlet", device.outlets(), Tree.Outlet::name);
      }
    }

    private void terminal(Word name, List<Tree.Terminal> terminals) {
      for (Tree.Terminal terminal : terminals) {
        refer(name, terminal.kind().word(), List.of(terminal), Tree.Terminal::name);
      }
    }
  }

  /** Walks one procedure. */
  private final class ProcedureWalk {
    private final FileWalk file;
    private final Tree.Procedure procedure;
    private final Tree.Device device;
    private final Tree.Analyzer analyzer;
    private final List<Tree.Lead> leads = new ArrayList<>();
    private final List<Tree.ExtraSetting> settings = new ArrayList<>();
    private final List<Step> records = new ArrayList<>();

    ProcedureWalk(FileWalk file, Tree.Procedure procedure) {
      this.file = file;
      this.procedure = procedure;
      this.device = file.find(Tree.Device.class, procedure.device());
      this.analyzer = file.find(Tree.Analyzer.class, procedure.analyzer());
      for (Word set : procedure.leads()) {
        Tree.Leads one = file.find(Tree.Leads.class, set);
        if (one != null) {
          leads.addAll(one.leads());
        }
      }
      if (device != null) {
        settings.addAll(device.settings());
      }
      if (analyzer != null) {
        settings.addAll(analyzer.settings());
      }
    }

    private void declared(Word word, Tree.Declaration one) {
      if (one != null) {
        file.refer(word, one.kind(), List.of(one), Tree.Declaration::name);
      }
    }

    void walk() {
      file.declare("procedure", procedure.name(), procedure.title());
      declared(procedure.device(), device);
      declared(procedure.analyzer(), analyzer);
      procedure.leads().forEach(set -> declared(set, file.find(Tree.Leads.class, set)));
      procedure.cautions().forEach(c -> file.declare("caution", c.name(), null));
      procedure.phases().forEach(p -> file.declare("phase", p, null));
      procedure.steps().forEach(this::record);
      procedure.setups().forEach(this::setup);
      for (Tree.Part part : procedure.parts()) {
        if (part instanceof Tree.Section section) {
          file.declare("section", section.name(), section.title());
        } else if (part instanceof Tree.Adjust adjust) {
          file.declare("adjust", adjust.name(), adjust.title());
          adjust.affects().forEach(a -> file.refer(a, "test", procedure.tests(), Tree.Test::name));
        } else if (part instanceof Tree.Test test) {
          test(test);
        }
      }
      procedure.steps().forEach(this::step);
    }

    private void record(Step step) {
      Word name = recorded(step);
      if (name != null) {
        records.add(step);
        file.declare("record", name, null);
      }
    }

    private static Word recorded(Step step) {
      return step instanceof Step.Record record
          ? record.name()
          : step instanceof Step.Choose choose ? choose.name() : null;
    }

    private void step(Step step) {
      if (step instanceof Step.Perform perform) {
        Word action = perform.action().get(perform.action().size() - 1);
        if (device != null) {
          file.refer(action, "action", device.actions(), Tree.Action::name);
        }
        if (analyzer != null) {
          file.refer(action, "action", analyzer.actions(), Tree.Action::name);
        }
      }
      Matcher placeholder = PLACEHOLDER.matcher(step.span().text());
      while (placeholder.find()) {
        int start = step.span().start() + placeholder.start(1);
        Span span = new Span(step.span().file(), start, start + placeholder.group(1).length());
        Word word = new Word(placeholder.group(1), span);
        file.refer(word, "record", records, ProcedureWalk::recorded);
      }
    }

    private void setup(Tree.Setup setup) {
      file.declare("setup", setup.name(), setup.title());
      declared(setup.analyzer(), file.find(Tree.Analyzer.class, setup.analyzer()));
      Tree.Analyzer bench =
          setup.analyzer() == null ? analyzer : file.find(Tree.Analyzer.class, setup.analyzer());
      for (Tree.Wire wire : setup.wires()) {
        file.refer(wire.lead(), wire.link() ? "link" : "lead", leads, Tree.Lead::name);
        end(wire.from(), bench);
        end(wire.to(), bench);
      }
    }

    private void end(Tree.Ref ref, Tree.Analyzer bench) {
      List<Word> parts = ref == null ? List.of() : ref.parts();
      if (parts.size() == 2 && parts.get(0).text().equals("analyzer") && bench != null) {
        file.terminal(parts.get(1), bench.terminals());
      } else if (parts.size() == 2 && parts.get(0).text().equals("outlet") && device != null) {
        device.outlets().forEach(o -> file.terminal(parts.get(1), o.terminals()));
      } else if (parts.size() == 3 && parts.get(0).text().equals("device") && device != null) {
        file.outlet(parts.get(1), device);
        device.outlets().stream()
            .filter(o -> o.name().text().equals(parts.get(1).text()))
            .forEach(o -> file.terminal(parts.get(2), o.terminals()));
      }
    }

    private void test(Tree.Test test) {
      file.declare("test", test.name(), test.title());
      test.outlets().forEach(o -> file.outlet(o, device));
      file.refer(test.setup(), "setup", procedure.setups(), Tree.Setup::name);
      if (test.inside() != null && device != null) {
        Word state = test.inside().parts().get(test.inside().parts().size() - 1);
        file.refer(state, "state", device.states(), Tree.State::name);
      }
      if (test.sweep() != null) {
        file.declare("quantity", test.sweep().as(), null);
      }
      test.derives().forEach(d -> file.declare("quantity", d.name(), d.title()));
      test.accepts().forEach(a -> accept(a, test));
      if (test.table() != null) {
        table(test.table());
      }
    }

    private void accept(Tree.Accept accept, Tree.Test test) {
      declared(accept.by(), file.find(Tree.Rule.class, accept.by()));
      if (accept.quantity() != null) {
        quantity(accept.quantity(), test);
      }
      if (accept.limit() instanceof LimitExpression.AtMost most) {
        variables(most.upper(), test);
      } else if (accept.limit() instanceof LimitExpression.AtLeast least) {
        variables(least.lower(), test);
      } else if (accept.limit() instanceof LimitExpression.Between between) {
        variables(between.lower(), test);
        variables(between.upper(), test);
      }
    }

    private void quantity(Word word, Tree.Test test) {
      file.refer(word, "quantity", test.derives(), Tree.Derive::name);
      if (test.sweep() != null) {
        file.refer(word, "quantity", List.of(test.sweep()), Tree.Sweep::as);
      }
    }

    private void variables(Expression expression, Tree.Test test) {
      if (expression instanceof Expression.Variable variable) {
        quantity(variable.name(), test);
      } else if (expression instanceof Expression.Negative negative) {
        variables(negative.inner(), test);
      } else if (expression instanceof Expression.Binary binary) {
        variables(binary.left(), test);
        variables(binary.right(), test);
      } else if (expression instanceof Expression.Call call) {
        call.arguments().forEach(a -> variables(a, test));
      }
    }

    private void table(Tree.Table table) {
      int modes = -1;
      for (int i = 0; i < table.columns().size(); i++) {
        Word name = table.columns().get(i).name();
        modes = name != null && name.text().equals("mode") ? i : modes;
        file.refer(name, "setting", settings, Tree.ExtraSetting::name);
      }
      for (Tree.Row row : table.rows()) {
        if (modes < 0 || modes >= row.cells().size() || device == null) {
          continue;
        }
        for (Tree.Value value : row.cells().get(modes).values()) {
          if (value instanceof Tree.NameValue mode) {
            file.refer(mode.name(), "mode", device.modes(), Tree.Mode::name);
          }
        }
      }
    }
  }
}
