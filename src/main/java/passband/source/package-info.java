/** Texts, the files they come from, and places in them. */
package passband.source;
