/**
 * Verdicts on recorded readings. Everything here comes from two files, the limits that {@code
 * build} wrote and the readings; no source is compiled. Readings and limits are compared as exact
 * decimals; probabilities are doubles by commons-statistics.
 */
@NullMarked
package passband.judge;

import org.jspecify.annotations.NullMarked;
