/**
 * What changed in meaning between two compiled procedures: {@link passband.plan.Meaning} takes each
 * apart, {@link passband.diff.Differences} sets their facts side by side, {@link
 * passband.diff.ChangeClassifier} says what each difference is and how much it can hurt.
 */
@NullMarked
package passband.diff;

import org.jspecify.annotations.NullMarked;
