/**
 * What a reading has to be: rules and stated limits as exact values, the analyzer's uncertainty,
 * the guard band, and the one rounding at the end.
 */
@NullMarked
package passband.limit;

import org.jspecify.annotations.NullMarked;
