package passband.format;

import static passband.parse.antlr.PassbandLexer.BAR;
import static passband.parse.antlr.PassbandLexer.LBRACE;
import static passband.parse.antlr.PassbandLexer.NEWLINE;
import static passband.parse.antlr.PassbandLexer.RBRACE;
import static passband.parse.antlr.PassbandLexer.TABLE;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.parse.Syntax;
import passband.source.SourceFile;

/**
 * Lays a file out: two spaces for each block, one space between words, tables and runs of like
 * statements in columns, at most one empty line. Every word and every comment stays, in its order;
 * a comment stays after the word it came after.
 */
public final class Formatter {
  private static final int WIDTH = 120;
  private static final int INDENT = 2;

  private final SourceFile source;
  private final List<LayoutLine> lines;
  private final Map<LayoutLine, String> texts = new IdentityHashMap<>();

  private Formatter(SourceFile source) {
    this.source = source;
    this.lines = withComments(lines(source), Syntax.comments(source));
  }

  /** The line of the source, from 1, that a word is on. */
  private int row(Token word) {
    return source.lineOf(word.getStartIndex());
  }

  /**
   * The file laid out; null when it has a syntax fault, which goes to the diagnostics.
   *
   * @throws IllegalStateException when a word or comment would get lost, which is a fault of this
   *     class
   */
  public static @Nullable String format(SourceFile source, Diagnostics diagnostics) {
    Diagnostics own = new Diagnostics();
    Syntax.parse(source, own);
    diagnostics.addAll(own.list());
    if (own.hasErrors()) {
      return null;
    }
    String text = new Formatter(source).text();
    SourceFile again = new SourceFile(source.path(), text);
    if (!words(source).equals(words(again)) || !comments(source).equals(comments(again))) {
      throw new IllegalStateException(
          "formatting " + source.path() + " would change more than its layout");
    }
    return text;
  }

  private static List<String> words(SourceFile source) {
    return Syntax.laidOut(source).stream().map(t -> t.getType() + t.getText().strip()).toList();
  }

  private static List<String> comments(SourceFile source) {
    return Syntax.comments(source).stream().map(t -> t.getText().stripTrailing()).toList();
  }

  // ---- from words to lines ----

  private static List<LayoutLine> lines(SourceFile source) {
    List<LayoutLine> lines = new ArrayList<>();
    List<Token> words = new ArrayList<>();
    int depth = 0;
    int table = -1;
    for (Token token : Syntax.laidOut(source)) {
      if (token.getType() == Token.EOF) {
        continue;
      }
      if (token.getType() != NEWLINE) {
        words.add(token);
        continue;
      }
      int last = words.get(words.size() - 1).getType();
      if (words.size() == 1 && last == RBRACE) {
        depth--;
        table = depth == table ? -1 : table;
        lines.add(LayoutLine.of(LayoutLine.Kind.CLOSE, words, depth));
      } else if (last == LBRACE) {
        lines.add(LayoutLine.of(LayoutLine.Kind.HEAD, words, depth));
        table = words.get(0).getType() == TABLE ? depth : table;
        depth++;
      } else {
        lines.add(
            LayoutLine.of(
                table >= 0 ? LayoutLine.Kind.ROW : LayoutLine.Kind.STATEMENT, words, depth));
      }
      words = new ArrayList<>();
    }
    return lines;
  }

  private List<LayoutLine> withComments(List<LayoutLine> lines, List<Token> comments) {
    List<LayoutLine> all = new ArrayList<>();
    int next = 0;
    for (LayoutLine line : lines) {
      while (next < comments.size() && comments.get(next).getStartIndex() < line.start()) {
        next += place(comments.get(next), all, line.kind == LayoutLine.Kind.CLOSE, line.depth);
      }
      all.add(line.on(this::row));
      while (next < comments.size() && comments.get(next).getStartIndex() < line.end()) {
        int after = wordBefore(line, comments.get(next));
        boolean beside = row(line.words.get(after)) == row(comments.get(next));
        line.inner.add(new LayoutLine.Inner(after, beside, comments.get(next)));
        next++;
      }
    }
    while (next < comments.size()) {
      next += place(comments.get(next), all, false, 0);
    }
    return all;
  }

  /** A comment between two lines: at the end of the one before, or on a line of its own. */
  private int place(Token comment, List<LayoutLine> all, boolean beforeClose, int depth) {
    LayoutLine last = all.isEmpty() ? null : all.get(all.size() - 1);
    if (last != null && last.comment == null && last.lastRow == row(comment)) {
      last.trailing = comment;
    } else {
      all.add(LayoutLine.of(comment, beforeClose ? depth + 1 : depth).on(this::row));
    }
    return 1;
  }

  private static int wordBefore(LayoutLine line, Token comment) {
    int before = 0;
    for (int i = 0; i < line.words.size(); i++) {
      if (line.words.get(i).getStartIndex() < comment.getStartIndex()) {
        before = i;
      }
    }
    return before;
  }

  // ---- from lines to text ----

  private String text() {
    layTables();
    layRuns();
    StringBuilder out = new StringBuilder();
    LayoutLine last = null;
    for (LayoutLine line : lines) {
      if (last != null && gap(last, line)) {
        out.append('\n');
      }
      write(line, out);
      last = line;
    }
    return out.toString();
  }

  private static boolean gap(LayoutLine last, LayoutLine line) {
    if (last.kind == LayoutLine.Kind.HEAD || line.kind == LayoutLine.Kind.CLOSE) {
      return false;
    }
    boolean topBlock =
        line.depth == 0
            && (last.kind == LayoutLine.Kind.CLOSE
                || line.kind == LayoutLine.Kind.HEAD && last.kind != LayoutLine.Kind.COMMENT);
    return topBlock || line.firstRow - last.lastRow > 1;
  }

  private void write(LayoutLine line, StringBuilder out) {
    String indent = " ".repeat(INDENT * line.depth);
    if (line.comment != null) {
      out.append(indent).append(line.comment.getText().stripTrailing()).append('\n');
      return;
    }
    String text = texts.get(line);
    out.append(indent).append(text == null ? broken(line, indent) : text);
    if (line.trailing != null) {
      out.append("  ").append(line.trailing.getText().stripTrailing());
    }
    out.append('\n');
  }

  /** A statement with comments inside it, or one that is too wide for a line. */
  private static String broken(LayoutLine line, String indent) {
    List<Spacing.Piece> pieces = Spacing.pieces(line.words);
    String further = "\n" + indent + " ".repeat(2 * INDENT);
    StringBuilder out = new StringBuilder();
    int column = indent.length();
    boolean fresh = true;
    for (int i = 0; i < pieces.size(); i++) {
      Spacing.Piece piece = pieces.get(i);
      String text = (!fresh && piece.space() ? " " : "") + piece.text();
      boolean wide =
          column + ColumnAlignment.length(text) > WIDTH && i > 0 && pieces.get(i - 1).breakable();
      if (wide && !fresh) {
        out.append(further);
        column = further.length() - 1;
        text = piece.text();
      }
      out.append(text);
      column += ColumnAlignment.length(text);
      fresh = false;
      for (LayoutLine.Inner inner : line.inner) {
        if (inner.after() == i) {
          out.append(fresh ? "" : inner.beside() ? "  " : further)
              .append(inner.comment().getText().stripTrailing())
              .append(further);
          fresh = true;
          column = further.length() - 1;
        }
      }
    }
    return out.toString();
  }

  /** Whether the statement goes on one line; one that may end a line nowhere has to. */
  private static boolean fits(LayoutLine line) {
    List<Spacing.Piece> pieces = Spacing.pieces(line.words);
    boolean narrow = INDENT * line.depth + ColumnAlignment.length(Spacing.joined(pieces)) <= WIDTH;
    boolean whole = pieces.subList(0, pieces.size() - 1).stream().noneMatch(p -> p.breakable());
    return line.inner.isEmpty() && (narrow || whole);
  }

  private void layRuns() {
    List<LayoutLine> run = new ArrayList<>();
    LayoutLine last = null;
    for (LayoutLine line : lines) {
      if (last != null && (gap(last, line) || line.kind != LayoutLine.Kind.STATEMENT)) {
        texts.putAll(ColumnAlignment.aligned(run));
        run.clear();
      }
      if (line.kind == LayoutLine.Kind.STATEMENT && fits(line)) {
        run.add(line);
      } else if (line.kind == LayoutLine.Kind.HEAD || line.kind == LayoutLine.Kind.CLOSE) {
        if (fits(line)) {
          texts.put(line, Spacing.joined(Spacing.pieces(line.words)));
        }
      }
      last = line;
    }
    texts.putAll(ColumnAlignment.aligned(run));
  }

  private void layTables() {
    List<LayoutLine> rows = new ArrayList<>();
    for (LayoutLine line : lines) {
      if (line.kind == LayoutLine.Kind.ROW) {
        rows.add(line);
      } else if (line.kind == LayoutLine.Kind.CLOSE) {
        layTable(rows);
        rows.clear();
      }
    }
  }

  private void layTable(List<LayoutLine> rows) {
    List<List<String>> cells = new ArrayList<>();
    List<Integer> widths = new ArrayList<>();
    for (LayoutLine row : rows) {
      List<String> texts = cells(row.words);
      cells.add(texts);
      for (int i = 0; i < texts.size(); i++) {
        int width = ColumnAlignment.length(texts.get(i));
        if (i == widths.size()) {
          widths.add(width);
        } else {
          widths.set(i, Math.max(widths.get(i), width));
        }
      }
    }
    for (int r = 0; r < rows.size(); r++) {
      StringBuilder text = new StringBuilder();
      List<String> row = cells.get(r);
      for (int i = 0; i < row.size(); i++) {
        text.append(i == 0 ? "" : " | ").append(row.get(i));
        if (i + 1 < row.size()) {
          text.append(" ".repeat(widths.get(i) - ColumnAlignment.length(row.get(i))));
        }
      }
      this.texts.put(rows.get(r), text.toString().stripTrailing());
    }
  }

  private static List<String> cells(List<Token> words) {
    List<String> cells = new ArrayList<>();
    List<Token> cell = new ArrayList<>();
    for (Token word : words) {
      if (word.getType() == BAR) {
        cells.add(Spacing.joined(Spacing.pieces(cell)));
        cell.clear();
      } else {
        cell.add(word);
      }
    }
    cells.add(Spacing.joined(Spacing.pieces(cell)));
    return cells;
  }
}
