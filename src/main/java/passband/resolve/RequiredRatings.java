package passband.resolve;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.source.SourceFile;
import passband.source.Span;
import passband.syntax.Ratings;

/**
 * {@code rating-missing}, an error: a rating that a check needs and that a declaration neither
 * gives nor says to be unknown; all of one declaration together. {@code unknown-without-reason}, an
 * error: a rating that is said to be unknown and not why.
 */
final class RequiredRatings {
  /** A rating that is missing: the word of its line, and what it is called in a message. */
  private record Missing(String word, String called) {}

  private final String what;
  private final Span at;
  private final List<Ratings.Unknown> unknown;
  private final Diagnostics diagnostics;
  private final List<Missing> missing = new ArrayList<>();

  /**
   * @param what the declaration in words
   * @param at its name, on the line that opens it
   * @param unknown the ratings that it says to be unknown
   */
  RequiredRatings(String what, Span at, List<Ratings.Unknown> unknown, Diagnostics diagnostics) {
    this.what = what;
    this.at = at;
    this.unknown = unknown;
    this.diagnostics = diagnostics;
  }

  /**
   * Needs a rating.
   *
   * @param word that leads its line
   * @param called what it is called in a message
   */
  RequiredRatings need(String word, String called, boolean given) {
    Ratings.Unknown said = Ratings.Unknown.find(unknown, word);
    if (given && said != null) {
      diagnostics
          .say(Code.REPEATED_ITEM, said.span(), "the %s is given, and said to be unknown", called)
          .hint("leave one of the two lines")
          .fix(Fix.removeLines("remove this line", said.span()));
    } else if (!given && said == null) {
      missing.add(new Missing(word, called));
    }
    return this;
  }

  /** Whether all are given or said to be unknown; what is not has been said. */
  boolean areGiven() {
    unknown.forEach(one -> checkReason(one, diagnostics));
    if (missing.isEmpty()) {
      return true;
    }
    StringBuilder called = new StringBuilder();
    List<String> lines = new ArrayList<>();
    for (Missing one : missing) {
      boolean last = lines.size() == missing.size() - 1;
      called.append(lines.isEmpty() ? "no " : last ? " and no " : ", no ").append(one.called);
      lines.add(one.word + " unknown because \"\"");
    }
    diagnostics
        .say(Code.RATING_MISSING, at, "%s states %s", what, called)
        .hint("state it, or say why it is unknown: %s unknown because \"…\"", missing.get(0).word)
        .fix(inside("say why it is unknown", lines));
    return false;
  }

  /** Lines put in at the top of the block, or after a line that opens none. */
  private Fix inside(String title, List<String> lines) {
    SourceFile file = at.file();
    String head = file.line(at.line());
    int start = file.lineStart(at.line());
    int brace = brace(head, at.start() - start);
    String rest = brace < 0 ? "" : head.substring(brace + 1);
    int indent = head.length() - head.stripLeading().length() + (brace < 0 ? 0 : 2);
    StringBuilder text = new StringBuilder();
    for (String one : lines) {
      text.append('\n').append(" ".repeat(indent)).append(one);
    }
    text.append(rest.isBlank() ? "" : "\n");
    int where = brace < 0 ? at.end() : start + brace + 1;
    return Fix.insert(title, new Span(file, where, where), text.toString());
  }

  /** Where a line opens its block, texts apart; −1 where it opens none. */
  private static int brace(String line, int from) {
    boolean inText = false;
    for (int i = from; i < line.length() && (inText || line.charAt(i) != '#'); i++) {
      if (line.charAt(i) == '"') {
        inText = !inText;
      } else if (line.charAt(i) == '{' && !inText) {
        return i;
      }
    }
    return -1;
  }

  /** Says a reason that is empty; null for what is not said to be unknown. */
  static void checkReason(Ratings.@Nullable Unknown unknown, Diagnostics diagnostics) {
    if (unknown != null && unknown.reason().text().isBlank()) {
      diagnostics
          .say(
              Code.UNKNOWN_WITHOUT_REASON,
              unknown.reason().span(),
              "'%s' is unknown here without a reason",
              unknown.rating().text())
          .hint("say who was asked, or where it was looked for");
    }
  }
}
