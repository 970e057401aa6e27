/** The command line: files, folders, options, exit statuses. */
@NullMarked
package passband.command;

import org.jspecify.annotations.NullMarked;
