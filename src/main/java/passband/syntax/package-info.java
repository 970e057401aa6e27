/**
 * The syntax tree: what an author wrote, with the place of every word, before any name is looked
 * up.
 */
package passband.syntax;
