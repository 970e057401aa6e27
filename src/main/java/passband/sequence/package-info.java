/** Work on the elements of collections. */
package passband.sequence;
