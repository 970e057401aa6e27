/**
 * What an editor asks for: analysis of open texts, names, completion, hover, fixes and renaming.
 */
@NullMarked
package passband.edit;

import org.jspecify.annotations.NullMarked;
