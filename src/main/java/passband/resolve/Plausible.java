package passband.resolve;

import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.quantity.Rational;
import passband.syntax.Amount;

/**
 * Ratings that no lead and no load of a bench has: a prefix was lost, and whatever is held against
 * the rating passes. The bounds are common practice, no source.
 */
final class Plausible {
  /** In V: leads for generators are rated for some kilovolts. */
  private static final Rational LEAD = Rational.of(50_000);

  /** In W: a generator delivers some hundred watts. */
  private static final Rational LOAD = Rational.of(5_000);

  private final Diagnostics diagnostics;

  Plausible(Diagnostics diagnostics) {
    this.diagnostics = diagnostics;
  }

  /** What a lead is rated for, in V; the same for what cannot be told. */
  @Nullable Rational lead(Amount written, @Nullable Rational volts) {
    if (volts != null && volts.compareTo(LEAD) > 0) {
      say(written, "no test lead is rated for more than 50 kV");
    }
    return volts;
  }

  /** What a load takes, in W. */
  @Nullable Rational load(Amount written, @Nullable Rational watts) {
    if (watts != null && watts.compareTo(LOAD) > 0) {
      say(written, "no load of an analyzer takes more than 5 kW");
    }
    return watts;
  }

  private void say(Amount written, String what) {
    diagnostics
        .say(Code.PREFIX_SLIP, written.span(), "%s: is the unit right?", what)
        .hint("check the unit and its prefix against the maker's data");
  }
}
