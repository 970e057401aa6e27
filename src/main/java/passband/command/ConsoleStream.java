package passband.command;

import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.util.Locale;
import java.util.Map;

/**
 * Prints to a console in its own encoding. A character that the encoding does not have is written
 * out: a µ that came as a question mark would be a wrong unit.
 */
final class ConsoleStream extends PrintStream {
  private static final Map<Integer, String> WRITTEN_OUT =
      Map.ofEntries(
          Map.entry(0x2126, "ohm"),
          Map.entry((int) 'Ω', "ohm"),
          Map.entry((int) 'µ', "u"),
          Map.entry((int) 'μ', "u"),
          Map.entry((int) '−', "-"),
          Map.entry((int) '–', "-"),
          Map.entry((int) '—', "-"),
          Map.entry((int) '±', "+/-"),
          Map.entry((int) '≤', "<="),
          Map.entry((int) '≥', ">="),
          Map.entry((int) '×', "x"),
          Map.entry((int) '·', "*"),
          Map.entry((int) '°', "deg "),
          Map.entry((int) '“', "\""),
          Map.entry((int) '”', "\""),
          Map.entry((int) '…', "..."));

  private final CharsetEncoder encoder;

  ConsoleStream(OutputStream out, Charset charset) {
    super(out, false, charset);
    this.encoder = charset.newEncoder();
  }

  @Override
  public void print(String text) {
    super.print(shown(text));
  }

  @Override
  public void println(String text) {
    super.println(shown(text));
  }

  private String shown(String text) {
    if (encoder.canEncode(text)) {
      return text;
    }
    StringBuilder shown = new StringBuilder();
    text.codePoints()
        .forEach(
            c -> {
              String letter = Character.toString(c);
              shown.append(encoder.canEncode(letter) ? letter : writtenOut(c));
            });
    return shown.toString();
  }

  private static String writtenOut(int c) {
    String known = WRITTEN_OUT.get(c);
    return known == null ? String.format(Locale.ROOT, "<U+%04X>", c) : known;
  }
}
