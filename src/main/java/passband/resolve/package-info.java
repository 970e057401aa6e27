/**
 * From trees to what their names stand for: files and their uses, declarations in sight, profiles
 * with exact values.
 */
package passband.resolve;
