package passband.record;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import passband.evidence.BadInput;
import passband.source.Sha256;

/**
 * A file that a record was made from, whole.
 *
 * @param name as it was given, without its folders
 * @param encoding how {@code text} holds the bytes
 */
public record KeptFile(String name, Encoding encoding, String text) {

  /** How the bytes of a file are held in a text. */
  public enum Encoding {
    UTF_8("utf-8"),
    /** For what is not UTF-8, such as tables of spreadsheets in UTF-16. */
    BASE64("base64");

    private final String word;

    Encoding(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }

  /** Of a file's bytes. */
  public static KeptFile of(String path, byte[] bytes) {
    String name = path.substring(Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1);
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return new KeptFile(name, Encoding.UTF_8, text);
    } catch (CharacterCodingException e) {
      return new KeptFile(name, Encoding.BASE64, Base64.getEncoder().encodeToString(bytes));
    }
  }

  /** Its bytes again. */
  public byte[] bytes() throws BadInput {
    if (encoding == Encoding.UTF_8) {
      return text.getBytes(StandardCharsets.UTF_8);
    }
    try {
      return Base64.getDecoder().decode(text);
    } catch (IllegalArgumentException e) {
      throw new BadInput(name + ": this is not Base64");
    }
  }

  /** Of its bytes. */
  public String sha256() throws BadInput {
    return Sha256.hex(bytes());
  }
}
