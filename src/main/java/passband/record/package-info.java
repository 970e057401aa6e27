/**
 * The record of a visit: the limits and readings that it was judged from, with their digests, what
 * came out, and what a report has to say beside it. It can be made again from its own parts, so
 * that whatever was altered shows.
 */
@NullMarked
package passband.record;

import org.jspecify.annotations.NullMarked;
