/**
 * What changed in meaning between two compiled procedures: {@link passband.diff.Facts} takes each
 * apart, {@link passband.diff.PlanDiff} sets them side by side, {@link
 * passband.diff.ChangeClassifier} says what each difference is and how much it can hurt.
 */
package passband.diff;
