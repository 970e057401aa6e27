package passband.resolve;

import java.util.List;
import passband.syntax.Adjust;
import passband.syntax.Gate;
import passband.syntax.SharedPart;
import passband.syntax.Step;
import passband.syntax.Tree;

/** Records what a file declares by name. */
public final class Declarations {
  private final Names names;

  private Declarations(Names names) {
    this.names = names;
  }

  /** Records everything that has a name in a file. */
  public static void record(Tree.File file, Names names) {
    Declarations all = new Declarations(names);
    for (Tree.Declaration one : file.declarations()) {
      names.declare(one.kind(), one.name(), one.title());
      if (one instanceof Tree.Device device) {
        all.device(device);
      } else if (one instanceof Tree.Analyzer analyzer) {
        all.analyzer(analyzer);
      } else if (one instanceof Tree.Leads leads) {
        leads.leads().forEach(l -> names.declare(l.kind().word(), l.name(), l.title()));
      } else if (one instanceof Tree.Rule rule) {
        rule.derives().forEach(d -> names.declare("quantity", d.name(), d.title()));
      } else if (one instanceof SharedPart part) {
        all.procedure(part.lines());
      } else if (one instanceof Tree.Procedure procedure) {
        all.procedure(procedure);
      }
    }
  }

  private void device(Tree.Device device) {
    for (Tree.Outlet outlet : device.outlets()) {
      names.declare("outlet", outlet.name(), outlet.title());
      names.former(outlet.renamedFrom(), outlet.name());
      terminals(outlet.terminals());
    }
    for (Tree.Mode mode : device.modes()) {
      names.declare("mode", mode.name(), mode.title());
      names.former(mode.renamedFrom(), mode.name());
    }
    device.states().forEach(s -> names.declare("state", s.name(), s.title()));
    actions(device.actions());
    settings(device.settings());
  }

  private void analyzer(Tree.Analyzer analyzer) {
    terminals(analyzer.terminals());
    analyzer.loads().forEach(l -> names.declare("load", l.name(), null));
    actions(analyzer.actions());
    settings(analyzer.settings());
  }

  private void terminals(List<Tree.Terminal> terminals) {
    terminals.forEach(t -> names.declare(t.kind().word(), t.name(), t.title()));
  }

  private void actions(List<Tree.Action> actions) {
    actions.forEach(a -> names.declare("action", a.name(), null));
  }

  private void settings(List<Tree.ExtraSetting> settings) {
    for (Tree.ExtraSetting setting : settings) {
      names.declare("setting", setting.name(), setting.title());
      if (setting.options() != null) {
        setting.options().forEach(o -> names.declare("option", o.name(), o.title()));
      }
    }
  }

  private void procedure(Tree.Procedure procedure) {
    procedure.instruments().forEach(i -> names.declare("role", i.role(), null));
    procedure.cautions().forEach(c -> names.declare("caution", c.name(), null));
    procedure.phases().forEach(p -> names.declare("phase", p, null));
    procedure.setups().forEach(s -> names.declare("setup", s.name(), s.title()));
    procedure.parts().forEach(this::part);
    procedure.steps().forEach(this::step);
  }

  private void part(Tree.Part part) {
    if (part instanceof Tree.Section section) {
      names.declare("section", section.name(), section.title());
    } else if (part instanceof Gate gate) {
      names.declare("gate", gate.name(), gate.text());
    } else if (part instanceof Adjust adjust) {
      names.declare("adjust", adjust.name(), adjust.title());
    } else if (part instanceof Tree.Test test) {
      names.declare("test", test.name(), test.title());
      names.former(test.renamedFrom(), test.name());
      test.derives().forEach(d -> names.declare("quantity", d.name(), d.title()));
      if (test.sweep() != null) {
        names.declare("quantity", test.sweep().as(), null);
      }
    }
  }

  private void step(Step step) {
    if (step instanceof Step.Record record) {
      names.declare("record", record.name(), null);
    } else if (step instanceof Step.Choose choose) {
      names.declare("record", choose.name(), null);
    } else if (step instanceof Step.Confirm confirm) {
      names.declare("confirm", confirm.name(), null);
    } else if (step instanceof Step.Caution caution) {
      names.declare("caution", caution.name(), null);
    }
  }
}
