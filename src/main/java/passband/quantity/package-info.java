/** Exact numbers, dimensions, units and the quantities of the trade. */
@NullMarked
package passband.quantity;

import org.jspecify.annotations.NullMarked;
