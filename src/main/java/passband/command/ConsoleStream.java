package passband.command;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CharsetEncoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/**
 * Shows UTF-8 text on a console that shows another charset, such as a Windows console's code page.
 * A character that it lacks is written in those that it has, else as a question mark.
 */
final class ConsoleStream extends OutputStream {
  private static final int BUFFER = 1 << 10;

  private final OutputStream console;
  private final Charset charset;
  private final CharsetEncoder encoder;
  private final CharsetDecoder decoder =
      StandardCharsets.UTF_8
          .newDecoder()
          .onMalformedInput(CodingErrorAction.REPLACE)
          .onUnmappableCharacter(CodingErrorAction.REPLACE);
  private final ByteBuffer bytes = ByteBuffer.allocate(BUFFER);
  private final CharBuffer chars = CharBuffer.allocate(BUFFER);

  ConsoleStream(OutputStream console, Charset charset) {
    this.console = console;
    this.charset = charset;
    this.encoder = charset.newEncoder();
  }

  @Override
  public void write(int one) throws IOException {
    write(new byte[] {(byte) one}, 0, 1);
  }

  @Override
  public void write(byte[] from, int offset, int length) throws IOException {
    int at = offset;
    while (at < offset + length) {
      int taken = Math.min(bytes.remaining(), offset + length - at);
      bytes.put(from, at, taken);
      at += taken;
      // What a character's bytes begin is left in the buffer for the rest of them.
      bytes.flip();
      decoder.decode(bytes, chars, false);
      bytes.compact();
      chars.flip();
      console.write(shown(chars).getBytes(charset));
      chars.clear();
    }
  }

  @Override
  public void flush() throws IOException {
    console.flush();
  }

  private String shown(CharSequence text) {
    StringBuilder shown = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (encoder.canEncode(c)) {
        shown.append(c);
      } else if (!Character.isLowSurrogate(c)) {
        shown.append(instead(c));
      }
    }
    return shown.toString();
  }

  private static String instead(char c) {
    return switch (c) {
      case '−', '–', '—', '‑' -> "-";
      case '…' -> "...";
      case '‘', '’', '‚' -> "'";
      case '“', '”', '„', '«', '»' -> "\"";
      case 'Ω', '\u2126' -> "ohm";
      case 'µ', 'μ' -> "u";
      case '°' -> "deg ";
      case '±' -> "+/-";
      case '×', '·' -> "*";
      case '²' -> "^2";
      case '³' -> "^3";
      case '√' -> "sqrt";
      case '≤' -> "<=";
      case '≥' -> ">=";
      case '≠' -> "<>";
      case '≈' -> "~";
      case '→' -> "->";
      case '←' -> "<-";
      case '\u00a0', '\u202f', '\u2009' -> " ";
      default -> "?";
    };
  }
}
