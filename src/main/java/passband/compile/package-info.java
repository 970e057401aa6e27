/**
 * From parsed files to compiled procedures: names resolved, rows, points, limits and steps planned,
 * checks run.
 */
@NullMarked
package passband.compile;

import org.jspecify.annotations.NullMarked;
