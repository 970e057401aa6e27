package passband.diagnostic;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The manual: a page for every code, in Markdown, with an example and its mend. */
public final class Explanations {
  private Explanations() {}

  /** The page of a code, with whether it can be allowed and what the reason must say. */
  public static String page(Code code) {
    return text(code.id() + ".md") + "\n## Allowing it\n\n" + allowing(code) + "\n";
  }

  /** The first paragraph of what a code means. */
  public static String what(Code code) {
    String page = page(code);
    String heading = "\n## What\n\n";
    int from = page.indexOf(heading) + heading.length();
    return page.substring(from, page.indexOf("\n\n", from)).replace('\n', ' ');
  }

  private static String allowing(Code code) {
    if (!code.allowable()) {
      return "It cannot be allowed.";
    }
    String line = "`allow " + code.id() + " because \"…\"` in the block that it is about";
    String question = code.question();
    return question == null
        ? line + " silences it."
        : line
            + " lets it stand. The reason must say "
            + question
            + "; the sheet prints it for"
            + " the reviewer.";
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
