/** The compiled procedure: points with their limits, steps and wiring in bench order. */
@NullMarked
package passband.plan;

import org.jspecify.annotations.NullMarked;
