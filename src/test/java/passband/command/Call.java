package passband.command;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;

/**
 * What a call of Passband came to, with both its outputs in UTF-8.
 *
 * @param status how it ended
 * @param bytes what it printed
 * @param err what it said besides
 */
record Call(int status, byte[] bytes, String err) {
  /** In a folder, from a script. */
  static Call of(Path folder, String... words) {
    return of(folder, null, false, words);
  }

  /**
   * In a folder.
   *
   * @param program by which the build cache tells versions; null for none
   */
  static Call of(Path folder, String program, boolean terminal, String... words) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Invocation invocation =
        new Invocation(
            folder,
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            0,
            program,
            terminal);
    int status = Main.run(invocation, List.of(words));
    return new Call(status, out.toByteArray(), err.toString(StandardCharsets.UTF_8));
  }

  /** What it printed. */
  String out() {
    return new String(bytes, StandardCharsets.UTF_8);
  }
}
