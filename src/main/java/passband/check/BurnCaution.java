package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.plan.Plan;
import passband.sequence.Seq;

/**
 * {@code caution-missing}, an error that nothing allows: output is delivered and the sheet does not
 * say that it burns.
 */
final class BurnCaution implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    boolean output = Seq.of(plan.points()).anyMatch(p -> p.mode() != null);
    boolean said =
        Seq.of(plan.cautions())
            .anyMatch(c -> c.name().text().equals("burn") && !c.text().isBlank());
    if (output && !said) {
      diagnostics.add(
          Diagnostic.of(
                  Code.CAUTION_MISSING,
                  plan.name().span(),
                  "this procedure delivers output and has no 'caution burn'")
              .hint(
                  "add caution burn \"High-frequency output burns. Touch no lead, pin or jack while the output is on.\""));
    }
  }
}
