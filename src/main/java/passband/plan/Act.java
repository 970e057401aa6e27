package passband.plan;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.Device.State;
import passband.model.Lead;
import passband.model.Terminal;
import passband.model.Termination;
import passband.quantity.Rational;
import passband.quantity.Units;

/** What a step is: its kind and its operands, without any words. */
public sealed interface Act {
  /** Calls the method for this kind. */
  <T> T accept(Visitor<T> visitor);

  /** What to do with each kind. */
  interface Visitor<T> {
    T select(Select select);

    T adjust(Adjust adjust);

    T set(Set set);

    T setLoad(SetLoad setLoad);

    T free(Free free);

    T run(Run run);

    T activate(Activate activate);

    T shown(Shown shown);

    T read(Read read);

    T perform(Perform perform);

    T pause(Wait wait);

    T rest(Rest rest);

    T confirm(Confirm confirm);

    T noted(Noted noted);

    T caution(Caution caution);

    T choose(Choose choose);

    T ready(Ready ready);

    T stays(Stays stays);
  }

  /** The mode is selected; the outlet is null in a test without outlets. */
  record Select(@Nullable Outlet outlet, Mode mode) implements Act {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.select(this);
    }
  }

  /** The mode's setting is adjusted. */
  record Adjust(Figure setting) implements Act {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.adjust(this);
    }
  }

  /**
   * Another setting is set.
   *
   * @param value as printed
   */
  record Set(Owner owner, String setting, String value) implements Act {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.set(this);
    }

    /** {@code device.supply}. */
    public String id() {
      return owner.role() + "." + setting;
    }
  }

  /** An instrument's load is set: to a resistance, or to open or short; the other one is null. */
  record SetLoad(Owner unit, @Nullable Figure load, @Nullable Termination termination)
      implements Act {
    /** As printed: {@code 350 Ω}, {@code open}. */
    public String text() {
      return Point.Settings.text(load, termination);
    }

    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.setLoad(this);
    }
  }

  /**
   * What a hand holds: a contact that it closes, or an instrument's key.
   *
   * @param accessory that has its button or pedal; null for a button of the generator's own
   */
  record Pressed(Terminal contact, @Nullable Lead accessory) {}

  /** Free text. */
  record Free() implements Act {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.free(this);
    }
  }

  /**
   * An instrument starts, holds its reading or stops; to stop it stops the output too.
   *
   * @param released what is let go of when it stops: the button or pedal by which output is
   *     activated by hand, or a key of which no instrument's own step says it; null for any other
   */
  record Run(PlanStep.Kind kind, Owner unit, @Nullable Pressed released) implements Act {
    /** Without a hand on a button. */
    public Run(PlanStep.Kind kind, Owner unit) {
      this(kind, unit, null);
    }

    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.run(this);
    }
  }

  /**
   * Output is activated.
   *
   * @param contact the contact that does it; null where the profile names none
   * @param key the key of an instrument to which the setup connects it; null where there is none: a
   *     contact without a key is closed by hand
   * @param instrument with that key, as printed where the bench has several; null where it is clear
   * @param accessory whose button or pedal closes the contact; null for a key or a button of the
   *     generator's own
   * @param beside whether output is on already and stays on, by another contact
   */
  record Activate(
      @Nullable Terminal contact,
      @Nullable Terminal key,
      @Nullable String instrument,
      @Nullable Lead accessory,
      boolean beside)
      implements Act {

    /** The same while another contact is held. */
    public Activate besides() {
      return new Activate(contact, key, instrument, accessory, true);
    }

    /** By something that nobody knows. */
    public static final Activate UNKNOWN = new Activate(null, null, null, null, false);

    /** What a hand presses; null where a key closes the contact, or none is known. */
    public @Nullable Pressed pressed() {
      return key != null || contact == null ? null : new Pressed(contact, accessory);
    }

    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.activate(this);
    }
  }

  /**
   * What was set for another outlet, which is to deliver at the same time, is still there.
   *
   * @param setting null for a mode without one
   */
  record Shown(Outlet outlet, Mode mode, @Nullable Figure setting) implements Act {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.shown(this);
    }
  }

  /**
   * Readings are taken and written down.
   *
   * @param by whose display shows them
   * @param what the printed names of what is read
   * @param sweep null in a test without one
   * @param ofSeveral whether output is activated again for something else that the point reads: the
   *     sheet then says which it is
   */
  record Read(Owner by, List<String> what, Stage.@Nullable Swept sweep, boolean ofSeveral)
      implements Act {
    /** Copies the names. */
    public Read {
      what = List.copyOf(what);
    }

    /** All that a point reads there. */
    public Read(Owner by, List<String> what, Stage.@Nullable Swept sweep) {
      this(by, what, sweep, false);
    }

    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.read(this);
    }
  }

  /**
   * A profile's action is performed.
   *
   * @param stops whether it stops the output
   */
  record Perform(Owner owner, String action, boolean stops) implements Act {
    /** Whether it turns output on. */
    public boolean activates() {
      return action.equals("activate");
    }

    /** Whether it lets an instrument measure: that turns no output on. */
    public boolean startsInstrument() {
      return action.equals("start") && !owner.isDevice();
    }

    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.perform(this);
    }
  }

  /** A time passes. */
  record Wait(Figure time) implements Act {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.pause(this);
    }
  }

  /** Output stays off for a time in which the generator cools, as the mode's duty asks. */
  record Rest(Figure time) implements Act {
    /** For whole seconds, rounded up. */
    public static Rest of(Rational seconds) {
      return new Rest(new Figure(seconds.ceilingTo(Rational.ONE), Units.of("s")));
    }

    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.rest(this);
    }
  }

  /** A tick; the name is null where it has none. */
  record Confirm(@Nullable String name) implements Act {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.confirm(this);
    }
  }

  /**
   * Something is recorded.
   *
   * @param unit as printed; null where it has none
   * @param limit what it has to be; null where anything will do
   */
  record Noted(String name, @Nullable String unit, @Nullable RecordLimit limit) implements Act {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.noted(this);
    }
  }

  /** A caution. */
  record Caution(String name) implements Act {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.caution(this);
    }
  }

  /**
   * The bench is made ready and that is confirmed: output is off, no lead is connected, and the
   * generator is in none of these states.
   */
  record Ready(List<State> states) implements Act {
    /** Copies the states. */
    public Ready {
      states = List.copyOf(states);
    }

    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.ready(this);
    }
  }

  /**
   * A setting stays as it was set last.
   *
   * @param id {@code device.supply}
   * @param title its printed name
   * @param value as printed; null where it is not known
   */
  record Stays(String id, String title, @Nullable String value) implements Act {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.stays(this);
    }
  }

  /** One of several outcomes is chosen; {@code pass} is null when any will do. */
  record Choose(String name, List<String> outcomes, @Nullable String pass) implements Act {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.choose(this);
    }
  }
}
