package passband.parse;

import static passband.parse.antlr.PassbandLexer.*;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Deque;
import java.util.List;
import org.antlr.v4.runtime.CommonToken;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.diagnostic.Spelling;
import passband.source.SourceFile;
import passband.source.Span;

/**
 * Lays words out in lines and blocks, so that the parser meets only lines whose first word its
 * block knows and only matched braces. A missing or extra brace and a misspelt first word are said
 * here, once, and repaired in the laid-out words.
 */
final class Layout {
  /**
   * A block that is open: its kind, the word that opened it, and whether its first line is still to
   * come.
   */
  private record Open(BlockKind kind, Token head) {}

  private final SourceFile source;
  private final Diagnostics diagnostics;
  private final BitSet badLines;
  private final List<Token> out;
  private final Deque<Open> open = new ArrayDeque<>();
  private @Nullable Token lastHead;
  private int lastHeadEnd = -1;
  private @Nullable Open lastClosed;
  private int lastClosedAt = -1;
  private int columns;
  private int openedVirtuallyAt = -1;

  private Layout(SourceFile source, Diagnostics diagnostics, BitSet badLines, int size) {
    this.source = source;
    this.diagnostics = diagnostics;
    this.badLines = badLines;
    this.out = new ArrayList<>(size + size / 4);
  }

  /** The words laid out; {@code badLines} as in {@link Lexer#of}. */
  static List<Token> of(
      SourceFile source, List<Token> words, Diagnostics diagnostics, BitSet badLines) {
    Layout layout = new Layout(source, diagnostics, badLines, words.size());
    layout.open.push(new Open(BlockKind.IN_FILE, words.get(0)));
    layout.run(words);
    return layout.out;
  }

  private void run(List<Token> words) {
    int at = 0;
    while (words.get(at).getType() != Token.EOF) {
      at =
          switch (words.get(at).getType()) {
            case NEWLINE -> at + 1;
            case RBRACE -> close(words, at);
            case LBRACE -> strayOpening(words, at);
            default -> statement(words, at);
          };
    }
    finish(words.get(at));
  }

  // ---- closing ----

  private int close(List<Token> words, int at) {
    Token brace = words.get(at);
    if (open.size() == 1) {
      if (firstBad(brace)) {
        diagnostics.say(Code.STRAY_BRACE, span(brace), "unmatched '}': no block is open here");
      }
      return at + 1;
    }
    lastClosed = open.pop();
    lastClosedAt = out.size();
    out.add(brace);
    out.add(newline(brace));
    lastHeadEnd = -1;
    return at + 1;
  }

  private void finish(Token end) {
    if (open.size() > 1) {
      sayUnclosed(open.peek(), end, "the file ends inside this block");
      while (open.size() > 1) {
        closeHere(end);
      }
    }
    out.add(end);
  }

  private void closeHere(Token where) {
    open.pop();
    out.add(virtual(RBRACE, "}", where));
    out.add(newline(where));
  }

  private void sayUnclosed(Open block, Token where, String message) {
    if (!firstBad(block.head)) {
      return;
    }
    DiagnosticBuilder said =
        diagnostics
            .say(Code.UNCLOSED_BLOCK, span(block.head), "%s", message)
            .hint("close it with a '}' on a line of its own")
            .fix(closing(where));
    if (where.getType() != Token.EOF) {
      said.note(span(where), "this line belongs outside it");
    }
  }

  /** A closing brace on a line of its own before the line of a word, or at the file's end. */
  private Fix closing(Token where) {
    boolean atEnd = where.getType() == Token.EOF;
    int at = atEnd ? source.text().length() : source.lineStart(where.getLine());
    boolean midLine = at > 0 && source.text().charAt(at - 1) != '\n';
    return Fix.insert("close the block", new Span(source, at, at), midLine ? "\n}\n" : "}\n");
  }

  /**
   * A brace that starts a line: where the line before has just been told that it lacks one, the
   * rest of this line goes with it; otherwise nothing tells what the block is, and it goes as a
   * whole.
   */
  private int strayOpening(List<Token> words, int at) {
    Token brace = words.get(at);
    if (firstBad(brace)) {
      diagnostics
          .say(Code.STRAY_BRACE, span(brace), "a line cannot start with '{'")
          .hint("put the brace at the end of the line that opens the block");
    }
    if (openedVirtuallyAt != out.size()) {
      return afterBlock(words, at);
    }
    int end = lineEnd(words, at + 1);
    return words.get(end).getType() == LBRACE ? afterBlock(words, end) : end;
  }

  // ---- statements ----

  private int statement(List<Token> words, int at) {
    Token lead = words.get(at);
    int end = lineEnd(words, at);
    boolean opensBlock = words.get(end).getType() == LBRACE;
    BlockKind kind = open.peek().kind;
    if (kind == BlockKind.IN_TABLE) {
      if (!leavesTable(words, at, end, opensBlock)) {
        row(words, at, end);
        return end;
      }
      sayUnclosed(open.peek(), lead, "this table is not closed");
      closeHere(lead);
      kind = open.peek().kind;
    }
    if (!fits(kind, words, at, end)) {
      lead = repaired(words, at, end);
      if (lead == null) {
        return skip(words, at, end);
      }
      kind = open.peek().kind;
    }
    return emit(words, at, end, lead, kind);
  }

  /** The index of the line's end or of the brace that ends it. */
  private static int lineEnd(List<Token> words, int at) {
    int end = at;
    while (!ends(words.get(end).getType())) {
      end++;
    }
    return end;
  }

  private static boolean ends(int type) {
    return type == NEWLINE || type == LBRACE || type == RBRACE || type == Token.EOF;
  }

  private static boolean fits(BlockKind kind, List<Token> words, int at, int end) {
    boolean limits =
        kind == BlockKind.IN_MODE || kind == BlockKind.IN_OUTLET || kind == BlockKind.IN_DEVICE;
    if (limits && at + 1 < end && isLimitWord(words.get(at + 1).getType())) {
      return true;
    }
    return kind.knows(words.get(at).getType());
  }

  private static boolean isLimitWord(int type) {
    return type == WITHIN || type == FROM || type == AT || type == UNKNOWN;
  }

  /** Whether a line in a table can only be meant for the block around it. */
  private boolean leavesTable(List<Token> words, int at, int end, boolean opensBlock) {
    if (opensBlock) {
      return true;
    }
    boolean bar = false;
    for (int i = at; i < end; i++) {
      bar |= words.get(i).getType() == BAR;
    }
    return columns > 1 && !bar && BlockKind.IN_TEST.knows(words.get(at).getType());
  }

  private void row(List<Token> words, int at, int end) {
    int bars = 1;
    for (int i = at; i < end; i++) {
      out.add(words.get(i));
      bars += words.get(i).getType() == BAR ? 1 : 0;
    }
    columns = columns == 0 ? bars : columns;
    out.add(newline(words.get(end - 1)));
  }

  private int emit(List<Token> words, int at, int end, Token lead, BlockKind kind) {
    out.add(lead);
    for (int i = at + 1; i < end; i++) {
      out.add(words.get(i));
    }
    lastHead = lead;
    lastClosed = null;
    Token last = words.get(end - 1);
    BlockKind opens = kind.opens(lead.getType());
    if (words.get(end).getType() == LBRACE) {
      return brace(words, at, end, lead, opens);
    }
    boolean rows =
        lead.getType() == TABLE && !(at + 1 < end && words.get(at + 1).getType() == FROM);
    if (opens != null && (rows || kind.opensAlways(lead.getType()))) {
      sayMissingBrace(last);
      openBlock(opens, lead, virtual(LBRACE, "{", last));
    } else {
      lastHeadEnd = out.size();
      out.add(newline(last));
    }
    return end;
  }

  /** A line that ends in an opening brace: opens its block, or is told that it has none. */
  private int brace(List<Token> words, int at, int end, Token lead, @Nullable BlockKind opens) {
    if (opens != null) {
      openBlock(opens, lead, words.get(end));
      return end + 1;
    }
    Token brace = words.get(end);
    if (firstBad(brace)) {
      diagnostics.say(
          Code.STRAY_BRACE,
          span(brace),
          "a line that starts with '%s' does not open a block here",
          lead.getText());
    }
    out.add(newline(words.get(end - 1)));
    lastHeadEnd = -1;
    return afterBlock(words, end);
  }

  private void openBlock(BlockKind kind, Token head, Token brace) {
    open.push(new Open(kind, head));
    out.add(brace);
    out.add(newline(brace));
    columns = 0;
    lastHeadEnd = -1;
    openedVirtuallyAt =
        brace.getTokenIndex() < 0 && brace.getStopIndex() < brace.getStartIndex() ? out.size() : -1;
  }

  private void sayMissingBrace(Token last) {
    if (firstBad(last)) {
      Span span = span(last);
      diagnostics
          .say(Code.MISSING_BRACE, span, "this line must open a block")
          .hint("end the line with '{'")
          .fix(Fix.insert("add an empty block", span.atEnd(), " {\n}"));
    }
  }

  // ---- lines that do not fit ----

  /**
   * The line's first word once the blocks around it are repaired; null when there is nothing to
   * make of the line.
   */
  private @Nullable Token repaired(List<Token> words, int at, int end) {
    Token lead = words.get(at);
    int word = lead.getType();
    BlockKind unopened = openedBefore(word);
    if (unopened != null && lastHead != null) {
      sayMissingBrace(out.get(lastHeadEnd - 1));
      out.remove(lastHeadEnd);
      openBlock(unopened, lastHead, virtual(LBRACE, "{", out.get(out.size() - 1)));
      return lead;
    }
    if (lastClosed != null && closedTooEarly(lastClosed, word)) {
      Token brace = out.get(lastClosedAt);
      if (firstBad(brace)) {
        diagnostics
            .say(Code.STRAY_BRACE, span(brace), "this brace closes its block too early")
            .note(span(lead), "'%s' belongs inside it", lead.getText());
      }
      out.remove(out.size() - 1);
      out.remove(out.size() - 1);
      open.push(lastClosed);
      return lead;
    }
    if (plausible(words, at) && closeUpTo(word, lead)) {
      return lead;
    }
    return respelt(lead);
  }

  /** The block that the line before lacks the brace of and that knows the word; null for none. */
  private @Nullable BlockKind openedBefore(int word) {
    if (lastHeadEnd != out.size() - 1 || lastHeadEnd < 0 || lastHead == null) {
      return null;
    }
    BlockKind kind = open.peek().kind.opens(lastHead.getType());
    return kind != null && kind.knows(word) ? kind : null;
  }

  private boolean closedTooEarly(Open closed, int word) {
    return lastClosedAt == out.size() - 2 && closed.kind.knows(word);
  }

  /**
   * Whether a line may be meant for a block further out: none is a bare word, starts with a dotted
   * name or goes on like a formula.
   */
  private static boolean plausible(List<Token> words, int at) {
    int next = words.get(at + 1).getType();
    boolean bare = next == NEWLINE || next == RBRACE || next == Token.EOF;
    boolean dotted = next == DOT || (!bare && words.get(at + 2).getType() == DOT);
    return switch (next) {
      case COMMA, BAR, EQUALS, LPAREN, SLASH, DIVIDE -> false;
      default -> !bare && !dotted;
    };
  }

  private boolean closeUpTo(int word, Token lead) {
    boolean known = false;
    for (Open block : open) {
      known |= block.kind.knows(word);
    }
    if (!known) {
      return false;
    }
    sayUnclosed(open.peek(), lead, "this block is not closed");
    while (!open.peek().kind.knows(word)) {
      closeHere(lead);
    }
    return true;
  }

  private @Nullable Token respelt(Token lead) {
    BlockKind kind = open.peek().kind;
    String near = lead.getType() == TEXT ? null : Spelling.nearest(lead.getText(), kind.words());
    if (firstBad(lead)) {
      diagnostics
          .say(Code.UNKNOWN_WORD, span(lead), "a line here cannot start with '%s'", shown(lead))
          .meant(near, "lines here start with %s", String.join(", ", kind.words()));
    }
    if (near == null) {
      return null;
    }
    CommonToken repaired = new CommonToken(lead);
    repaired.setType(kind.typeOf(near));
    return repaired;
  }

  private static String shown(Token token) {
    String text = token.getText();
    return text.length() <= 40 ? text : text.substring(0, text.offsetByCodePoints(0, 30)) + "…";
  }

  /** Leaves a line out, with the block it opens. */
  private int skip(List<Token> words, int at, int end) {
    return words.get(end).getType() == LBRACE ? afterBlock(words, end) : end;
  }

  /** The index after the brace that closes the one here, or of the end of the file. */
  private static int afterBlock(List<Token> words, int brace) {
    int depth = 0;
    int at = brace;
    do {
      int type = words.get(at).getType();
      depth += type == LBRACE ? 1 : type == RBRACE ? -1 : 0;
      if (type == Token.EOF) {
        return at;
      }
      at++;
    } while (depth > 0);
    return at;
  }

  // ---- words that are not in the text ----

  /** Whether a word's line has been sound so far; it is bad from now on. */
  private boolean firstBad(Token word) {
    boolean first = !badLines.get(word.getLine());
    badLines.set(word.getLine());
    return first;
  }

  private Span span(Token token) {
    return Lexer.span(source, token);
  }

  private static Token newline(Token after) {
    return virtual(NEWLINE, "\n", after);
  }

  private static Token virtual(int type, String text, Token after) {
    CommonToken token = new CommonToken(type, text);
    token.setLine(after.getLine());
    token.setStartIndex(after.getStopIndex() + 1);
    token.setStopIndex(after.getStopIndex());
    return token;
  }
}
