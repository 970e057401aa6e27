package passband.check;

import java.util.List;
import passband.diagnostic.Diagnostics;
import passband.plan.Plan;

/** All checks, run one after the other. */
public final class Checks {
  private static final List<Check> ALL =
      List.of(
          new ModeOnOutlet(),
          new SettingOnSpan(),
          new LoadAvailable(),
          new LoadWired(),
          new LoadRated(),
          new ReadOpenOrShort(),
          new RuleAgainstMode(),
          new RuleAgainstBound(),
          new StatedAgainstMode(),
          new NominalInside(),
          new Resolved(),
          new ErrorKnown(),
          new AccuracyRatio(),
          new LimitOrder(),
          new StatedOneSided(),
          new RelativeWidth(),
          new SamePointTwice(),
          new PrefixSlip(),
          new LeakageLimits(),
          new PowerTolerance(),
          new PeakAgainstRms(),
          new CrestFactor(),
          new PeakBelowRms(),
          new PeakBelowSine(),
          new SweepReach(),
          new Circuit(),
          new ReaderWired(),
          new PolesJoined(),
          new PolesWired(),
          new LeakageToEarth(),
          new UpperAtHighest(),
          new PoleEarthed(),
          new EarthSaid(),
          new Leads(),
          new DrawingFits(),
          new LeadRating(),
          new Activation(),
          new StepsDone(),
          new WordsThatActivate(),
          new OnTheBench(),
          new DutyKept(),
          new LoadPower(),
          new BurnCaution(),
          new StateLeft(),
          new Covered(),
          new GainNoticed(),
          new OutputAccepted(),
          new AdjustedRead(),
          new Used());

  private Checks() {}

  /**
   * Runs them.
   *
   * @param sound whether no error was found before; if not, checks for what is absent are left out
   */
  public static void run(Plan plan, boolean sound, Diagnostics diagnostics) {
    for (Check check : ALL) {
      if (sound || !check.needsWhole()) {
        check.check(plan, diagnostics);
      }
    }
  }
}
