package passband.library;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.source.SourceFile;
import passband.source.Span;

/** From bytes to text: UTF-8 and nothing else, a byte-order mark accepted and dropped. */
public final class Decoder {
  private Decoder() {}

  /** The file; null, with the fault said at its first bad byte, when it is not UTF-8. */
  public static @Nullable SourceFile decode(String path, byte[] bytes, Diagnostics diagnostics) {
    return isAscii(bytes)
        ? new SourceFile(path, new String(bytes, StandardCharsets.ISO_8859_1))
        : decoded(path, bytes, diagnostics);
  }

  /** Most sources are nothing but ASCII, and then need no decoder. */
  private static boolean isAscii(byte[] bytes) {
    for (byte b : bytes) {
      if (b < 0) {
        return false;
      }
    }
    return true;
  }

  private static @Nullable SourceFile decoded(String path, byte[] bytes, Diagnostics diagnostics) {
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    ByteBuffer in = ByteBuffer.wrap(bytes);
    CharBuffer out = CharBuffer.allocate(bytes.length + 1);
    CoderResult result = decoder.decode(in, out, true);
    out.flip();
    String text = out.toString();
    if (text.startsWith("\uFEFF")) {
      text = text.substring(1);
    }
    SourceFile file = new SourceFile(path, text);
    if (!result.isError()) {
      return file;
    }
    Span end = new Span(file, text.length(), text.length());
    int bad = Byte.toUnsignedInt(bytes[in.position()]);
    diagnostics
        .say(
            Code.NOT_UTF_8,
            end,
            "byte %d of this file, 0x%02X, is not valid UTF-8",
            in.position(),
            bad)
        .hint("save the file as UTF-8");
    return null;
  }
}
