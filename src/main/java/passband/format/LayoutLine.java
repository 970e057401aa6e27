package passband.format;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToIntFunction;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;

/** A statement, a row, a block's head or its closing brace, with the comments that go with it. */
final class LayoutLine {
  /** What a line is. */
  enum Kind {
    STATEMENT,
    HEAD,
    ROW,
    CLOSE,
    COMMENT
  }

  final Kind kind;
  final List<Token> words;
  final int depth;

  /** The comment of a line that is one; null for other lines. */
  final @Nullable Token comment;

  /** The comment that ends the line; null for none. */
  @Nullable Token trailing;

  /** Comments inside the statement: after which word each comes. */
  final List<Inner> inner = new ArrayList<>();

  /** The lines of the source that it starts and ends on. */
  int firstRow;

  int lastRow;

  /**
   * A comment inside a statement.
   *
   * @param after the word that it comes after
   * @param beside whether it stands on that word's line
   */
  record Inner(int after, boolean beside, Token comment) {}

  /** Takes the rows of its first and last words. */
  LayoutLine on(ToIntFunction<Token> row) {
    firstRow = row.applyAsInt(comment != null ? comment : words.get(0));
    lastRow = row.applyAsInt(comment != null ? comment : words.get(words.size() - 1));
    return this;
  }

  private LayoutLine(Kind kind, List<Token> words, int depth, @Nullable Token comment) {
    this.kind = kind;
    this.words = words;
    this.depth = depth;
    this.comment = comment;
  }

  static LayoutLine of(Kind kind, List<Token> words, int depth) {
    return new LayoutLine(kind, List.copyOf(words), depth, null);
  }

  static LayoutLine of(Token comment, int depth) {
    return new LayoutLine(Kind.COMMENT, List.of(), depth, comment);
  }

  int start() {
    return comment != null ? comment.getStartIndex() : words.get(0).getStartIndex();
  }

  int end() {
    return comment != null ? comment.getStopIndex() : words.get(words.size() - 1).getStopIndex();
  }

  int lead() {
    return words.isEmpty() ? 0 : words.get(0).getType();
  }
}
