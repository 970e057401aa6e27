/** The language server: documents, threads and the messages of the protocol. */
@NullMarked
package passband.server;

import org.jspecify.annotations.NullMarked;
