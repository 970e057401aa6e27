package passband.source;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 (FIPS 180-4), by the Java platform. */
public final class Sha256 {
  private Sha256() {}

  /** The 32 bytes of the digest. */
  public static byte[] of(byte[] bytes) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(bytes);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  /** The digest in lower-case hexadecimal. */
  public static String hex(byte[] bytes) {
    return HexFormat.of().formatHex(of(bytes));
  }
}
