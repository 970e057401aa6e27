package passband.parse;

import static passband.parse.antlr.PassbandLexer.*;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.antlr.v4.runtime.CommonToken;
import org.jspecify.annotations.Nullable;
import passband.quantity.Units;
import passband.source.SourceFile;
import passband.source.Span;

/** The words of a text, each with what it is by its looks and its place on the line. */
public final class Marks {
  private Marks() {}

  /** What a word is. */
  public enum Kind {
    KEYWORD,
    NAME,
    NUMBER,
    UNIT,
    TEXT,
    COMMENT,
    OPERATOR,
    OPENS,
    CLOSES
  }

  /** One word. */
  public record Mark(Kind kind, Span span) {}

  /** The words in order. */
  public static List<Mark> of(SourceFile source) {
    List<Mark> marks = new ArrayList<>();
    int before = NEWLINE;
    int last = NEWLINE;
    for (CommonToken word : Lexer.lex(source.text())) {
      Kind kind = kind(word, last, before);
      if (kind != null) {
        marks.add(new Mark(kind, Lexer.span(source, word)));
      }
      if (word.getType() != COMMENT) {
        before = last;
        last = word.getType();
      }
    }
    return marks;
  }

  /** The blocks of a text, from brace to brace, in the order in which they close. */
  public static List<Span> blocks(SourceFile source) {
    List<Span> blocks = new ArrayList<>();
    Deque<Span> open = new ArrayDeque<>();
    for (Mark mark : of(source)) {
      if (mark.kind == Kind.OPENS) {
        open.push(mark.span);
      } else if (mark.kind == Kind.CLOSES && !open.isEmpty()) {
        blocks.add(open.pop().to(mark.span));
      }
    }
    return blocks;
  }

  private static @Nullable Kind kind(CommonToken word, int last, int before) {
    return switch (word.getType()) {
      case COMMENT -> Kind.COMMENT;
      case TEXT, OPEN_TEXT -> Kind.TEXT;
      case NUMBER, COMMA_NUMBER, DATE -> Kind.NUMBER;
      case LBRACE -> Kind.OPENS;
      case RBRACE -> Kind.CLOSES;
      case PERCENT -> Kind.UNIT;
      case PLUS, MINUS, STAR, CARET, DIVIDE, SLASH, EQUALS, BAR -> Kind.OPERATOR;
      case NAME -> unit(word, last, before) ? Kind.UNIT : Kind.NAME;
      default -> Keywords.written(word.getType()) == null ? null : keyword(last);
    };
  }

  /** After a number, after the stroke of a heading, or after the stroke of a unit. */
  private static boolean unit(CommonToken word, int last, int before) {
    return (last == NUMBER || last == SLASH) && Units.find(word.getText()) != null
        || last == SLASH && before == NAME;
  }

  /** A word of the language that stands after a dot is a name. */
  private static Kind keyword(int last) {
    return last == DOT ? Kind.NAME : Kind.KEYWORD;
  }
}
