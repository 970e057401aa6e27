package passband.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.model.Analyzer.Measure;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.syntax.TerminalKind;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * A generator.
 *
 * @param actions texts by name, in the order written
 * @param measures what its own display shows of its output
 * @param limits what holds in every test where neither the mode nor the outlet says otherwise
 * @param tree the declaration
 */
public record Device(
    Word name,
    String title,
    List<Outlet> outlets,
    List<Mode> modes,
    Map<String, Word> actions,
    List<State> states,
    List<ExtraSetting> settings,
    List<Measure> measures,
    List<Tree.QuantityLimit> limits,
    Tree.Device tree)
    implements Reader {

  @Override
  public String role() {
    return Instruments.DEVICE;
  }

  /**
   * An outlet.
   *
   * @param joins poles that have to be joined while it delivers output
   * @param limits what holds at it in every test, where the mode does not say otherwise
   */
  public record Outlet(
      Word name,
      String title,
      @Nullable String renamedFrom,
      List<Terminal> terminals,
      List<Join> joins,
      List<Tree.QuantityLimit> limits)
      implements Named {
    /** Of its declaration: all that it holds need not be looked through. */
    @Override
    public int hashCode() {
      return name.hashCode();
    }

    /** The terminals that carry output. */
    public List<Terminal> poles() {
      List<Terminal> poles = new ArrayList<>(terminals);
      poles.removeIf(terminal -> terminal.kind() != TerminalKind.POLE);
      return poles;
    }

    /** The terminals that activate when they are closed. */
    public List<Terminal> contacts() {
      List<Terminal> contacts = new ArrayList<>(terminals);
      contacts.removeIf(terminal -> terminal.kind() != TerminalKind.CONTACT);
      return contacts;
    }

    /** The terminal of this name, or null. */
    public @Nullable Terminal terminal(String wanted) {
      return Named.find(terminals, wanted);
    }
  }

  /** A condition of the device. */
  public record State(Word name, String title, String enter, String leave) implements Named {}

  /**
   * How long output may be on, and how long it must rest after, in seconds; both null when it may
   * be on all the time.
   *
   * @param on the longest on-time
   * @param off the rest after that
   */
  public record Duty(@Nullable Rational on, @Nullable Rational off) {
    /** Whether output may stay on. */
    public boolean continuous() {
      return on == null;
    }
  }

  /**
   * What a mode can be set to, and the loads that it is rated for; null where there is none.
   *
   * @param terminations {@code open} and {@code short}, where they are among its loads
   */
  public record Adjustable(
      @Nullable QuantityKind kind,
      @Nullable Series setting,
      @Nullable Series loads,
      List<Termination> terminations) {}

  /**
   * A mode.
   *
   * @param through the outlet of the return path, or null
   * @param duty null when not given
   */
  public record Mode(
      Word name,
      String title,
      List<Outlet> outlets,
      @Nullable Outlet through,
      @Nullable String renamedFrom,
      Adjustable adjustable,
      Tree.Tolerances tolerances,
      @Nullable Duty duty,
      List<Tree.Ref> activateBy,
      Tree.Mode tree)
      implements Named {

    /** A mode is the same as another when they are of one declaration. */
    @Override
    public boolean equals(Object other) {
      return other instanceof Mode mode && tree == mode.tree;
    }

    @Override
    public int hashCode() {
      return System.identityHashCode(tree);
    }

    /** The quantity of the setting; null when there is none. */
    public @Nullable QuantityKind settingKind() {
      return adjustable.kind;
    }

    /** What it can be set to; null when there is no setting. */
    public @Nullable Series setting() {
      return adjustable.setting;
    }

    /** The rated loads; null when there are none. */
    public @Nullable Series loads() {
      return adjustable.loads;
    }

    /** Which of open and short are among its rated loads. */
    public List<Termination> terminations() {
      return adjustable.terminations;
    }

    /** The tolerance of its output; null when nothing is said. */
    public Tree.@Nullable QuantityLimit output() {
      return tolerances.output();
    }

    /** What else it must keep to, the highest peak voltage for one. */
    public List<Tree.QuantityLimit> limits() {
      return tolerances.limits();
    }

    /** Whether the mode is on the outlet. */
    public boolean isOn(Outlet outlet) {
      return Named.find(outlets, outlet.name().text()) != null;
    }
  }

  /**
   * What holds of a quantity in every test at an outlet: the outlet's own line, else the
   * generator's; null where neither has one.
   */
  public Tree.@Nullable QuantityLimit bound(@Nullable Outlet outlet, String quantity) {
    for (List<Tree.QuantityLimit> lines :
        List.of(outlet == null ? List.<Tree.QuantityLimit>of() : outlet.limits, limits)) {
      for (Tree.QuantityLimit line : lines) {
        if (line.quantity().text().equals(quantity)) {
          return line;
        }
      }
    }
    return null;
  }

  /** The outlet of this name, or null. */
  public @Nullable Outlet outlet(String wanted) {
    return Named.find(outlets, wanted);
  }

  /** The mode of this name, or null. */
  public @Nullable Mode mode(String wanted) {
    return Named.find(modes, wanted);
  }

  /** The state of this name, or null. */
  public @Nullable State state(String wanted) {
    return Named.find(states, wanted);
  }
}
