/** The words of the sheet in each of its languages: a file for each, the same keys in all. */
@NullMarked
package passband.words;

import org.jspecify.annotations.NullMarked;
