package passband.diagnostic;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The manual: a page for every code, in Markdown, with an example and its mend. */
public final class Explanations {
  private Explanations() {}

  /** The page of a code. */
  public static String page(Code code) {
    return text(code.id() + ".md");
  }

  /** The devices, analyzer and leads that the examples use. */
  public static String bench() {
    return text("bench.pband");
  }

  private static String text(String name) {
    try (InputStream in = Explanations.class.getResourceAsStream("/passband/explain/" + name)) {
      if (in == null) {
        throw new IllegalStateException("there is no page " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
