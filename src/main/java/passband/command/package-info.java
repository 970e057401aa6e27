/** The command line: files, folders, options, exit statuses. */
package passband.command;
