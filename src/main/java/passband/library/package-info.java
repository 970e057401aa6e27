/** A library's files: where its root is, how bytes become text, and what each file uses. */
package passband.library;
