/**
 * From trees to what their names stand for: files and their uses, declarations in sight, profiles
 * with exact values.
 */
@NullMarked
package passband.resolve;

import org.jspecify.annotations.NullMarked;
