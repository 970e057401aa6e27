package passband.parse;

import static passband.parse.antlr.PassbandLexer.*;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.List;
import org.antlr.v4.runtime.CommonToken;
import org.jspecify.annotations.Nullable;
import passband.source.SourceFile;
import passband.source.Span;

/**
 * Where in a text a cursor stands, however incomplete the text is: the blocks around it, the words
 * before it on its line and the word that is being typed.
 *
 * @param blocks the words of each open block's first line, the outermost first
 * @param leading the words that may lead a line here
 * @param before the words on the line, complete ones only
 * @param typed what is typed of the word at the cursor; empty between words
 * @param typedFrom the offset at which that begins
 * @param header the words of a table's first row; null outside a table
 * @param inText whether the cursor is in a text or a comment
 */
public record CursorContext(
    List<List<String>> blocks,
    List<String> leading,
    List<String> before,
    String typed,
    int typedFrom,
    @Nullable List<String> header,
    boolean inText) {

  /** One block that is open. */
  private record Open(@Nullable BlockKind kind, List<String> head) {}

  /** The place of an offset. */
  public static CursorContext at(SourceFile source, int offset) {
    Deque<Open> open = new ArrayDeque<>();
    open.push(new Open(BlockKind.IN_FILE, List.of()));
    List<String> line = new ArrayList<>();
    List<String> header = null;
    String typed = "";
    int typedFrom = offset;
    boolean inText = false;
    for (CommonToken word : Lexer.lex(source.text())) {
      Span span = Lexer.span(source, word);
      int type = word.getType();
      if (span.start() >= offset) {
        break;
      }
      if (span.end() >= offset && type != NEWLINE) {
        if (type == TEXT || type == OPEN_TEXT || type == COMMENT) {
          inText = span.end() > offset || type != TEXT;
        } else if (isWord(type)) {
          typed = source.text().substring(span.start(), offset);
          typedFrom = span.start();
          break;
        }
      }
      switch (type) {
        case COMMENT -> {}
        case NEWLINE -> {
          if (open.peek().kind == BlockKind.IN_TABLE && header == null && !line.isEmpty()) {
            header = List.copyOf(line);
          }
          line.clear();
        }
        case LBRACE -> {
          open.push(new Open(opened(open.peek().kind, line), List.copyOf(line)));
          header = null;
          line.clear();
        }
        case RBRACE -> {
          if (open.size() > 1) {
            open.pop();
          }
          header = null;
          line.clear();
        }
        default -> line.add(word.getText());
      }
    }
    BlockKind kind = open.peek().kind;
    List<List<String>> blocks = new ArrayList<>();
    open.descendingIterator().forEachRemaining(o -> blocks.add(o.head));
    return new CursorContext(
        blocks.subList(1, blocks.size()),
        kind == null ? List.of() : kind.words(),
        List.copyOf(line),
        typed,
        typedFrom,
        kind == BlockKind.IN_TABLE ? (header == null ? List.of() : header) : null,
        inText);
  }

  /** Whether a text is a name: letters, digits and hyphens, a letter first. */
  public static boolean isName(String text) {
    List<CommonToken> words = Lexer.lex(text);
    return words.size() == 1
        && isWord(words.get(0).getType())
        && words.get(0).getText().equals(text);
  }

  private static boolean isWord(int type) {
    return type == NAME || Keywords.written(type) != null;
  }

  /** A block of a kind of its own, with no lines that are known, where the head is unknown. */
  private static @Nullable BlockKind opened(@Nullable BlockKind in, List<String> head) {
    return in == null || head.isEmpty() ? null : in.opens(Keywords.type(head.get(0)));
  }

  /** The first word of the innermost block's line; empty at the top of a file. */
  public String block() {
    List<String> head = blocks.isEmpty() ? List.of() : blocks.get(blocks.size() - 1);
    return head.isEmpty() ? "" : head.get(0);
  }

  /** The name on the line of the innermost block that begins with a word; null where none is. */
  public @Nullable String nameOf(String word) {
    for (int i = blocks.size() - 1; i >= 0; i--) {
      List<String> head = blocks.get(i);
      if (head.size() > 1 && head.get(0).equals(word)) {
        return head.get(1);
      }
    }
    return null;
  }

  /** Which cell of a row the cursor is in, from 0. */
  public int column() {
    return Collections.frequency(before, "|");
  }
}
