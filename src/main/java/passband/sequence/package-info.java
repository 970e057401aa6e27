/** Work on the elements of collections. */
@NullMarked
package passband.sequence;

import org.jspecify.annotations.NullMarked;
