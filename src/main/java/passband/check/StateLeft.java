package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Device.State;
import passband.plan.Plan;
import passband.plan.Stage;
import passband.syntax.Tree;

/** {@code state-not-left}, an error: a test enters a state whose leaving is not described. */
final class StateLeft implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      State state = run.state();
      Tree.Ref inside = run.tree().inside();
      if (state != null && state.leave().isBlank()) {
        diagnostics
            .say(
                Code.STATE_NOT_LEFT,
                inside == null ? run.test().span() : inside.span(),
                "the state '%s' is entered, but its 'leave' text is blank",
                state.name().text())
            .note(state.name().span(), "the state is here");
      }
    }
  }
}
