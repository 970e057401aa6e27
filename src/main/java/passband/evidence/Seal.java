package passband.evidence;

import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import passband.source.Sha256;

/**
 * A file's SHA-256 over its own bytes, without the line that carries it and with CRLF as LF. It
 * finds accidents; against forgery only a digest that is kept elsewhere helps.
 */
public final class Seal {
  /** What the line holds until the file is sealed. */
  public static final String OPEN = "0".repeat(64);

  private static final Pattern LINE =
      Pattern.compile("^  \"seal\": \"([0-9a-f]{64})\",\n", Pattern.MULTILINE);

  /** One that stands in a text of another layout. */
  private static final Pattern ANYWHERE = Pattern.compile("\"seal\"\\s*:\\s*\"[0-9a-f]{64}\"");

  private Seal() {}

  /** The text, whose line {@code "seal"} holds {@link #OPEN}, with its seal. */
  public static String sealed(String text) {
    return text.replaceFirst(OPEN, digest(bytewise(text.getBytes(StandardCharsets.UTF_8))));
  }

  /**
   * Nothing when the seal is right.
   *
   * @throws BadInput when there is none, or the text was changed since it was sealed
   */
  public static void check(String text) throws BadInput {
    check(text.getBytes(StandardCharsets.UTF_8));
  }

  /**
   * Nothing when the seal of a file is right.
   *
   * @throws BadInput when there is none, or the file was changed since it was sealed
   */
  public static void check(byte[] file) throws BadInput {
    String plain = bytewise(file).replace("\r\n", "\n");
    Matcher line = LINE.matcher(plain);
    if (!line.find()) {
      throw new BadInput(
          ANYWHERE.matcher(plain).find()
              ? "it was laid out anew after it was written, so its seal cannot be checked: the seal is"
                  + " of the text as Passband wrote it, with its line breaks and indentation"
              : "it has no seal");
    }
    if (!line.group(1).equals(digest(plain))) {
      throw new BadInput("its seal is broken: it was changed after it was written");
    }
  }

  /** The seal that a text carries, right or wrong; empty where it has none. */
  public static String of(String text) {
    Matcher line = LINE.matcher(text.replace("\r\n", "\n"));
    return line.find() ? line.group(1) : "";
  }

  /** A text without the line of its seal and with CRLF as LF. */
  public static String without(String text) {
    return LINE.matcher(text.replace("\r\n", "\n")).replaceFirst("");
  }

  /** One character for each byte: the seal is of bytes, whatever text they are. */
  private static String bytewise(byte[] file) {
    return new String(file, StandardCharsets.ISO_8859_1);
  }

  private static String digest(String bytewise) {
    String without = LINE.matcher(bytewise).replaceFirst("");
    return Sha256.hex(without.getBytes(StandardCharsets.ISO_8859_1));
  }
}
