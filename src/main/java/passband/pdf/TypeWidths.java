package passband.pdf;

/** How wide text is in some type. */
interface TypeWidths {
  /** The advance of a text, in points. */
  double width(String text, double size, boolean bold);

  /** The advance of a code point in thousandths of the type's size. */
  double advance(int codePoint, boolean bold);
}
