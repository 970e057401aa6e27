/**
 * From parsed files to compiled procedures: names resolved, rows, points, limits and steps planned,
 * checks run.
 */
package passband.compile;
