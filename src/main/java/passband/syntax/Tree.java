package passband.syntax;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.source.SourceFile;
import passband.source.Span;

/**
 * The declarations of a file and what is in them, as written. Lists are in the order written; a
 * missing part is null.
 */
public final class Tree {
  private Tree() {}

  /** One file. */
  public record File(SourceFile source, List<Use> uses, List<Declaration> declarations) {}

  /** {@code use "path"}. */
  public record Use(Word path) {}

  /** What a file declares by name. */
  public sealed interface Declaration permits Device, Analyzer, Leads, Rule, SharedPart, Procedure {
    /** Its name. */
    Word name();

    /** Its printed name; null when it has none. */
    @Nullable Word title();

    /** What it is, in the words of the language. */
    String kind();
  }

  /** {@code allow CODE because "…"}; {@code scope} is the declaration that it stands in. */
  public record Allow(Word code, Word reason, Span span, Span scope) {}

  /** {@code A}, {@code A to B} or {@code A to B step S}. */
  public record SeriesItem(Amount from, @Nullable Amount to, @Nullable Amount step, Span span) {}

  /** A dotted name. */
  public record Ref(List<Word> parts, Span span) {
    /** With its dots: {@code foot.cut}. */
    public String text() {
      List<String> words = new ArrayList<>();
      parts.forEach(part -> words.add(part.text()));
      return String.join(".", words);
    }
  }

  /** {@code action NAME "…"}. */
  public record Action(Word name, Word text, @Nullable Word as, Span span) {}

  /**
   * A setting besides the mode's own: {@code options} by name, {@code series} for a quantity. It is
   * left at a name or at an amount; both are null where nothing is said.
   */
  public record ExtraSetting(
      Word name,
      @Nullable Word title,
      @Nullable List<SettingOption> options,
      @Nullable List<SeriesItem> series,
      @Nullable Word leave,
      @Nullable Amount leaveAmount,
      Span span) {}

  // ---- device ----

  /** A generator. */
  public record Device(
      Word name,
      @Nullable Word title,
      List<Outlet> outlets,
      List<Mode> modes,
      List<Action> actions,
      List<State> states,
      List<ExtraSetting> settings,
      List<Measure> measures,
      List<QuantityLimit> limits,
      List<Allow> allows,
      Span span)
      implements Declaration {
    @Override
    public String kind() {
      return "device";
    }
  }

  /** One outlet; several declared on one line share their terminals. */
  public record Outlet(
      Word name,
      @Nullable Word title,
      @Nullable Word renamedFrom,
      List<Terminal> terminals,
      List<Join> joins,
      List<QuantityLimit> limits,
      Span span) {}

  /** Two terminals that have to be joined wherever output is delivered: {@code join a, b}. */
  public record Join(Ref one, Ref other, Span span) {}

  /** A pole or contact of an outlet, a jack or key of an analyzer. */
  public record Terminal(
      TerminalKind kind,
      Word name,
      @Nullable Word title,
      @Nullable Ref on,
      boolean byHand,
      @Nullable Amount holds,
      Span span) {}

  /** A mode of the device. */
  public record Mode(
      Word name,
      @Nullable Word title,
      List<Word> outlets,
      @Nullable Word through,
      @Nullable Word renamedFrom,
      Adjustable adjustable,
      Tolerances tolerances,
      Ratings.@Nullable Duty duty,
      List<Ref> activateBy,
      List<Allow> allows,
      Span span) {
    /** The quantity of the setting; null when there is none. */
    public @Nullable Word settingQuantity() {
      return adjustable.quantity();
    }

    /** What it can be set to. */
    public List<SeriesItem> setting() {
      return adjustable.setting();
    }

    /** The rated loads. */
    public List<SeriesItem> loads() {
      return adjustable.loads();
    }

    /** What its output has to be; null when nothing is said. */
    public @Nullable QuantityLimit output() {
      return tolerances.output();
    }

    /** What else it keeps to. */
    public List<QuantityLimit> limits() {
      return tolerances.limits();
    }
  }

  /** What a mode can be set to, and the loads that it is rated for, {@code open} among them. */
  public record Adjustable(
      @Nullable Word quantity,
      List<SeriesItem> setting,
      List<SeriesItem> loads,
      List<Word> terminations) {}

  /**
   * What a mode's output has to be, what else it keeps to, and which of its ratings nobody knows.
   */
  public record Tolerances(
      @Nullable QuantityLimit output, List<QuantityLimit> limits, List<Ratings.Unknown> unknown) {}

  /** A quantity and what it has to be. */
  public record QuantityLimit(Word quantity, LimitExpression limit, Span span) {}

  /** A condition of the device with the words that bring it about and end it. */
  public record State(
      Word name, @Nullable Word title, @Nullable Word enter, @Nullable Word leave, Span span) {}

  // ---- analyzer and leads ----

  /** An analyzer. */
  public record Analyzer(
      Word name,
      @Nullable Word title,
      List<Terminal> terminals,
      List<LoadBank> loads,
      List<Measure> measures,
      List<Action> actions,
      Ratings.Timing timing,
      List<ExtraSetting> settings,
      List<Allow> allows,
      Span span)
      implements Declaration {
    @Override
    public String kind() {
      return "analyzer";
    }
  }

  /** A load between two jacks. */
  public record LoadBank(
      @Nullable Word name,
      Ref from,
      Ref to,
      List<SeriesItem> values,
      List<Word> terminations,
      @Nullable WrittenError error,
      List<Ratings.Power> power,
      List<Ratings.Unknown> unknown,
      List<Join> joins,
      Span span) {}

  /** What the analyzer measures; between two jacks, or where null in the load's circuit. */
  public record Measure(
      Word quantity,
      @Nullable Ref from,
      @Nullable Ref to,
      @Nullable Amount through,
      List<Range> ranges,
      Span span) {}

  /** A range of a measured quantity. */
  public record Range(
      Amount from,
      Amount to,
      @Nullable Amount resolution,
      @Nullable WrittenError error,
      Ratings.@Nullable Unknown unknown,
      Span span) {}

  /** A set of leads and links. */
  public record Leads(
      Word name, @Nullable Word title, List<Lead> leads, List<Allow> allows, Span span)
      implements Declaration {
    @Override
    public String kind() {
      return "leads";
    }
  }

  /** One wire, a jumper or an accessory. */
  public record Lead(
      LeadKind kind,
      Word name,
      @Nullable Word title,
      @Nullable Amount rated,
      Ratings.@Nullable Unknown unknown,
      @Nullable Word colour,
      Span span) {}

  // ---- acceptance ----

  /** A named acceptance rule that several tests share. */
  public record Rule(
      Word name,
      @Nullable Word title,
      List<Derive> derives,
      List<Accept> accepts,
      List<Allow> allows,
      Span span)
      implements Declaration {
    @Override
    public String kind() {
      return "rule";
    }
  }

  /**
   * What is accepted, or {@code accept by RULE}: then only {@code by} is set.
   *
   * @param readAs the quantity that is read; null for the accepted one
   * @param readBy what it is read by: a role or {@code device}; null where nothing is said
   */
  public record Accept(
      @Nullable Word by,
      @Nullable Word quantity,
      @Nullable LimitExpression limit,
      @Nullable Word readAs,
      @Nullable Word readBy,
      Span span) {}

  /** A procedure. */
  public record Procedure(
      Word name,
      @Nullable Word title,
      Heading.@Nullable Revision revision,
      Bench bench,
      Heading.@Nullable Decision decision,
      List<Heading.Caution> cautions,
      Heading.Order order,
      List<Setup> setups,
      List<Part> parts,
      List<Allow> allows,
      Span span)
      implements Declaration {
    @Override
    public String kind() {
      return "procedure";
    }

    /** The name of the device. */
    public @Nullable Word device() {
      return bench.device();
    }

    /** The instruments that it names. */
    public List<Instrument> instruments() {
      return bench.instruments();
    }

    /** The names of its sets of leads. */
    public List<Word> leads() {
      return bench.leads();
    }

    /** The phases; empty when there are none. */
    public List<Word> phases() {
      return order.phases();
    }

    /** Whether it goes outlet by outlet. */
    public boolean byOutlet() {
      return order.byOutlet();
    }

    /** The code of its sheet's language; null for none. */
    public @Nullable Word language() {
      return order.language();
    }

    /** Its tests, in the order written. */
    public List<Test> tests() {
      List<Test> tests = new ArrayList<>();
      for (Part part : parts) {
        if (part instanceof Test test) {
          tests.add(test);
        }
      }
      return tests;
    }

    /** Every step of its sections, adjustments and tests, in the order written. */
    public List<Step> steps() {
      List<Step> steps = new ArrayList<>();
      for (Part part : parts) {
        if (part instanceof Section section) {
          steps.addAll(section.steps());
        } else if (part instanceof Adjust adjust) {
          steps.addAll(adjust.steps());
        } else if (part instanceof Test test) {
          test.steps().forEach(block -> steps.addAll(block.steps()));
        }
      }
      return steps;
    }
  }

  /** What a procedure's sheet goes through, in the order written. */
  public sealed interface Part permits Section, Gate, Test, Adjust, Include {
    /** Its name. */
    Word name();
  }

  /** What is on the bench: the device, the instruments and the sets of leads. */
  public record Bench(@Nullable Word device, List<Instrument> instruments, List<Word> leads) {}

  /** {@code analyzer [ROLE] NAME}; the role is null where none is given. */
  public record Instrument(@Nullable Word role, Word name, Span span) {}

  /** Steps with a heading; {@code when} is null where always done. */
  public record Section(
      Word name, @Nullable Word title, @Nullable OnlyWhen when, List<Step> steps, Span span)
      implements Part {}

  /** How leads go; for one analyzer only when {@code analyzer} is set. */
  public record Setup(
      Word name,
      @Nullable Word title,
      @Nullable Word analyzer,
      List<Wire> wires,
      List<Allow> allows,
      Span span) {}

  /** One lead or link and the terminals at its ends, or an accessory and those that it touches. */
  public record Wire(LeadKind kind, Word lead, List<Ref> at, Span span) {}

  /** A test. */
  public record Test(
      Word name,
      @Nullable Word title,
      @Nullable Word renamedFrom,
      Conditions conditions,
      @Nullable Sweep sweep,
      List<Derive> derives,
      List<Accept> accepts,
      @Nullable Table table,
      List<Steps> steps,
      List<Allow> allows,
      Span span)
      implements Part {
    /** The outlets that it is done on; empty for none. */
    public List<Word> outlets() {
      return conditions.outlets();
    }

    /** The name of the setup; null when there is none. */
    public @Nullable Word setup() {
      return conditions.setup();
    }

    /** The state that it is done in; null when there is none. */
    public @Nullable Ref inside() {
      return conditions.inside();
    }

    /** {@code off} or {@code inhibited}; null when not given. */
    public @Nullable Word output() {
      return conditions.output();
    }

    /** How long output is on; null when not given. */
    public @Nullable Amount onTime() {
      return conditions.onTime();
    }
  }

  /** {@code sweep load up from A to B step S until "…" as NAME}. */
  public record Sweep(
      Word what, boolean up, Amount from, Amount to, Amount step, Word until, Word as, Span span) {}

  /** Steps before, at each point, or after. */
  public record Steps(When when, @Nullable Word replacing, List<Step> steps, Span span) {
    /** When they are done. */
    public enum When {
      BEFORE,
      EACH,
      AFTER
    }
  }

  /** The table of a test: written here, or in the named file. */
  public record Table(@Nullable Word file, List<Column> columns, List<Row> rows, Span span) {}

  /**
   * {@code setting/W}, {@code stated current/mA}, {@code box.load/ohm}.
   *
   * @param owner what stands before the point: a role; null where nothing does
   */
  public record Column(
      boolean stated, @Nullable Word owner, @Nullable Word name, @Nullable Word unit, Span span) {}

  /** A row of cells. */
  public record Row(List<Cell> cells, Span span) {}

  /** A cell: several values, or none. */
  public record Cell(List<CellValue> values, Span span) {}
}
