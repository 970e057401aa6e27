/** The one layout of a source file. */
package passband.format;
