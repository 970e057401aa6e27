/**
 * What a procedure catches: the probability that at least one of its readings fails, given a fault
 * of the generator, of the bench or of the person.
 */
@NullMarked
package passband.detect;

import org.jspecify.annotations.NullMarked;
