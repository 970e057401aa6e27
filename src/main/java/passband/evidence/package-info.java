/**
 * What the technician is asked for: one list of items from which the sheet, the limits files, the
 * browser's script and the verdicts are made.
 */
@NullMarked
package passband.evidence;

import org.jspecify.annotations.NullMarked;
