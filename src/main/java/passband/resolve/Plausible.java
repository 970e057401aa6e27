package passband.resolve;

import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.quantity.Rational;
import passband.source.Span;
import passband.syntax.Amount;

/**
 * Ratings that nothing on a bench has: a prefix was lost, and whatever is held against the rating
 * passes. The bounds are common practice, no source, unless something else is said.
 */
final class Plausible {
  /** In V: leads for generators are rated for some kilovolts. */
  private static final Rational LEAD = Rational.of(50_000);

  /** In W: a generator delivers some hundred watts. */
  private static final Rational LOAD = Rational.of(5_000);

  /** An error is stated in digits of the display; of one a hundredth cannot be read. */
  private static final Rational SHARES = Rational.HUNDRED;

  /**
   * In ohm: leakage is measured through 1 kohm at mains frequency and 200 ohm at high frequency
   * (IEC 60601-1, 8.7.4, and 60601-2-2, 201.8.7, from memory).
   */
  private static final Rational MAINS_NETWORK = Rational.of(1_000);

  private static final Rational HF_NETWORK = Rational.of(200);

  /** A meter's own resistance may be off by so much: common practice, no source. */
  private static final Rational NETWORK_SHARE = Rational.of(1, 10);

  private final Diagnostics diagnostics;

  Plausible(Diagnostics diagnostics) {
    this.diagnostics = diagnostics;
  }

  /** What a lead is rated for, in V; the same for what cannot be told. */
  @Nullable Rational lead(Amount written, @Nullable Rational volts) {
    if (volts != null && volts.compareTo(LEAD) > 0) {
      say(written.span(), "no test lead is rated for more than 50 kV");
    }
    return volts;
  }

  /** What a load takes, in W. */
  @Nullable Rational load(Amount written, @Nullable Rational watts) {
    if (watts != null && watts.compareTo(LOAD) > 0) {
      say(written.span(), "no load of an analyzer takes more than 5 kW");
    }
    return watts;
  }

  /** The resistance of a meter through which a leakage flows, in ohm. */
  @Nullable Rational network(Amount written, @Nullable Rational ohms, String leakage) {
    boolean high = leakage.equals("hf-leakage");
    Rational own = high ? HF_NETWORK : MAINS_NETWORK;
    if (ohms != null && ohms.minus(own).abs().compareTo(own.times(NETWORK_SHARE)) > 0) {
      say(
          written.span(),
          high
              ? "leakage at high frequency is measured through 200 ohm"
              : "leakage at mains frequency is measured through 1 kohm");
    }
    return ohms;
  }

  /** The fixed part of a meter's error beside one step of its reading, both in SI. */
  void error(Span written, Rational fixed, Rational resolution) {
    if (!fixed.isZero() && fixed.times(SHARES).compareTo(resolution) < 0) {
      say(written, "the fixed part of this error is less than a hundredth of the resolution");
    }
  }

  private void say(Span written, String what) {
    diagnostics
        .say(Code.PREFIX_SLIP, written, "%s: is the unit right?", what)
        .hint("check the unit and its prefix against the maker's data");
  }
}
