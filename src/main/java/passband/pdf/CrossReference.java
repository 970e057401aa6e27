package passband.pdf;

import java.nio.charset.StandardCharsets;

/**
 * The table at a PDF's end of where its objects are. PDFBox counts the table itself among its
 * entries, for which it writes none; {@code qpdf --check} warns of that.
 */
final class CrossReference {
  private static final String TABLE = "/Type /XRef\n/Size ";
  private static final String ENTRIES = "\n/Index [0 ";

  private CrossReference() {}

  /** The same file with its number of entries; unchanged where that is right. */
  static byte[] counted(byte[] pdf) {
    String text = new String(pdf, StandardCharsets.ISO_8859_1);
    int table = text.lastIndexOf(TABLE);
    int entries = table < 0 ? -1 : text.indexOf(ENTRIES, table);
    int end = entries < 0 ? -1 : text.indexOf(']', entries);
    if (end < 0) {
      return pdf;
    }
    int from = table + TABLE.length();
    String count = text.substring(entries + ENTRIES.length(), end);
    // As long as before: what follows stays where the table says.
    String padded = count + " ".repeat(entries - from - count.length());
    byte[] counted = pdf.clone();
    byte[] digits = padded.getBytes(StandardCharsets.ISO_8859_1);
    System.arraycopy(digits, 0, counted, from, digits.length);
    return counted;
  }
}
