package passband.evidence;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.quantity.Distribution;
import passband.quantity.QuantityKind;
import passband.quantity.Unit;
import passband.quantity.Units;

/** One thing that the technician is asked for. Numbers are decimals in the item's own unit. */
public sealed interface Item {
  /** How the identities of what the sheet itself asks for begin. */
  String SHEET = "sheet/";

  /** The identity of the choice that says how the sheet came out: passed, failed, incomplete. */
  String RESULT = SHEET + "result";

  /** What every item has. */
  Head head();

  /** Calls the method for this kind. */
  <T> T accept(Visitor<T> visitor);

  /** Its identity, the same in every file. */
  default String id() {
    return head().id();
  }

  /** What to do with each kind; a new kind breaks every visitor until it is handled. */
  interface Visitor<T> {
    T reading(Reading reading);

    T derived(Derived derived);

    T recorded(Recorded recorded);

    T choice(Choice choice);

    T tick(Tick tick);
  }

  /**
   * What every item has.
   *
   * @param id a point's identity with its quantity, or {@code SECTION-or-RUN/STEP-NAME}
   * @param title what the sheet prints
   * @param phase null where the procedure has none, or the item belongs to none
   * @param place the heading under which it stands on the sheet
   * @param applies it applies when one of these is met; always when there are none
   * @param when all of these have to be met too
   */
  record Head(
      String id,
      String title,
      @Nullable String phase,
      String place,
      List<Condition> applies,
      List<Condition> when) {
    /** Without an outcome that has to have been chosen. */
    public Head(
        String id, String title, @Nullable String phase, String place, List<Condition> applies) {
      this(id, title, phase, place, applies, List.of());
    }
  }

  /** Met when the choice {@code item} is answered with one of {@code is}. */
  record Condition(String item, List<String> is) {}

  /** A value that has limits, or that a calculation needs: read or derived. */
  sealed interface Measured extends Item {
    /** Where it is measured. */
    Where where();

    /** What it is measured in. */
    Scale scale();

    /** What is accepted; null for a reading that only a calculation needs. */
    @Nullable Limits limits();
  }

  /**
   * A value that an instrument shows.
   *
   * @param budget what its uncertainty is made of; null where that is not known
   * @param due the blanks for the days on which the calibrations are due that bear on it; null
   *     where that is not known
   */
  record Reading(
      Head head,
      Where where,
      Scale scale,
      @Nullable Limits limits,
      @Nullable List<Contribution> budget,
      @Nullable List<String> due)
      implements Measured {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.reading(this);
    }
  }

  /** A value that is calculated from readings, never typed. */
  record Derived(Head head, Where where, Scale scale, Limits limits, Calculation calculation)
      implements Measured {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.derived(this);
    }
  }

  /**
   * A blank to fill in: with any text, or with a number where it has a unit.
   *
   * @param unit a UCUM code; null where there is none
   * @param accepts what the number has to be; null where any will do
   */
  record Recorded(Head head, @Nullable String unit, @Nullable Accepts accepts) implements Item {
    /** The name of a blank that the sheet itself asks for; null for any other. */
    public @Nullable String sheetName() {
      return id().startsWith(SHEET) ? id().substring(SHEET.length()) : null;
    }

    /** Whether a number below zero makes sense: whether a quantity in this unit may be one. */
    public boolean negative() {
      Unit known = unit == null ? null : Units.recorded(unit);
      return known == null || QuantityKind.mayBeNegative(known.dimension());
    }

    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.recorded(this);
    }
  }

  /**
   * What a recorded number has to be, in the unit of its blank, inclusive; null where that side is
   * open. Nothing is known of the uncertainty of what is recorded: there is no guard band.
   */
  record Accepts(@Nullable BigDecimal lower, @Nullable BigDecimal upper) {
    /** How many decimals a number needs to be compared. */
    public int decimals() {
      return Math.max(decimals(lower), decimals(upper));
    }

    private static int decimals(@Nullable BigDecimal end) {
      return end == null ? 0 : Math.max(0, end.stripTrailingZeros().scale());
    }

    /** One step of the last of these decimals. */
    public BigDecimal step() {
      return BigDecimal.ONE.movePointLeft(decimals());
    }
  }

  /**
   * One of several outcomes.
   *
   * @param pass the outcome that passes; null when any will do
   */
  record Choice(Head head, List<String> options, @Nullable String pass) implements Item {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.choice(this);
    }
  }

  /**
   * A box that must be ticked.
   *
   * @param stops of a gate, which passes only where every item before it has: the values after it
   *     that are not accepted unless it has; null for any other box
   */
  record Tick(Head head, @Nullable List<String> stops) implements Item {
    /** One that is no gate. */
    public Tick(Head head) {
      this(head, null);
    }

    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.tick(this);
    }
  }

  /**
   * Where a value is measured; units are UCUM codes, null where there is no such part.
   *
   * @param extras further settings by name, as printed
   */
  record Where(
      String test,
      @Nullable String outlet,
      @Nullable String mode,
      @Nullable BigDecimal setting,
      @Nullable String settingUnit,
      @Nullable BigDecimal load,
      @Nullable String loadUnit,
      Map<String, String> extras) {
    /** The same of no one value of a column, for what compares points that differ in it. */
    Where without(String column) {
      boolean set = column.equals("setting");
      boolean loaded = column.equals("load");
      Map<String, String> others = new LinkedHashMap<>(extras);
      others.remove(column);
      return new Where(
          test,
          column.equals("outlet") ? null : outlet,
          column.equals("mode") ? null : mode,
          set ? null : setting,
          set ? null : settingUnit,
          loaded ? null : load,
          loaded ? null : loadUnit,
          others);
    }
  }

  /**
   * What a value is measured in.
   *
   * @param quantity the name in the language
   * @param unit a UCUM code
   * @param resolution one step, in the unit
   * @param range the instrument's range as printed; null where there is none
   * @param negative whether a value below zero makes sense
   */
  record Scale(
      String quantity,
      String unit,
      BigDecimal resolution,
      @Nullable String range,
      boolean negative) {

    /** How many decimals a value needs. */
    public int decimals() {
      return Math.max(0, resolution.stripTrailingZeros().scale());
    }
  }

  /**
   * What is accepted, in the item's unit; null where that side is open.
   *
   * @param nominal six significant digits; null where there is none
   * @param lower the tolerance's ends, rounded inward
   * @param acceptLower what a reading is compared with; for a derived value the tolerance, since
   *     its guard band comes from the readings
   * @param uncertainty expanded, three significant digits rounded up; null where there is none
   * @param accuracyRatio two decimals rounded down; null where there is none
   * @param source {@code rule} or {@code stated}
   */
  record Limits(
      @Nullable BigDecimal nominal,
      @Nullable BigDecimal lower,
      @Nullable BigDecimal upper,
      @Nullable BigDecimal acceptLower,
      @Nullable BigDecimal acceptUpper,
      @Nullable BigDecimal uncertainty,
      @Nullable BigDecimal accuracyRatio,
      String source) {}

  /**
   * A part of a reading's uncertainty: at a reading y a distribution of half-width {@code
   * relative}·|y| + {@code absolute}, in the reading's unit.
   *
   * @param spread how it is distributed over that half-width
   */
  record Contribution(String name, BigDecimal relative, BigDecimal absolute, Distribution spread) {
    /** One of which only the limits are known: rectangular (JCGM 100, 4.3.7). */
    public Contribution(String name, BigDecimal relative, BigDecimal absolute) {
      this(name, relative, absolute, Distribution.RECTANGULAR);
    }

    /** The name of the contribution that is never correlated with another reading's. */
    public static final String RESOLUTION = "resolution";

    /** The name of what the load's error brings about, common to all readings at one load. */
    public static final String LOAD = "load error";
  }
}
