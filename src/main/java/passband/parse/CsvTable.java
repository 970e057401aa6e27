package passband.parse;

import static passband.parse.antlr.PassbandLexer.COMMENT;
import static passband.parse.antlr.PassbandLexer.NEWLINE;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.function.Function;
import org.antlr.v4.runtime.CommonToken;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Reason;
import passband.parse.antlr.PassbandParser;
import passband.parse.antlr.PassbandParser.CellContext;
import passband.parse.antlr.PassbandParser.ColumnContext;
import passband.source.SourceFile;
import passband.source.Span;
import passband.syntax.Tree;

/**
 * Reads a table from a CSV file: the first record names the columns, and each cell is written as in
 * a table of the language.
 */
public final class CsvTable {
  private final SourceFile source;
  private final Diagnostics diagnostics;
  private final Tables tables;
  private int at;

  private CsvTable(SourceFile source, Diagnostics diagnostics) {
    this.source = source;
    this.diagnostics = diagnostics;
    this.tables = new Tables(new Terminals(source, diagnostics, false), diagnostics);
  }

  /**
   * The table.
   *
   * @param span where the source names the file
   * @return null, with the fault said, when the file is no CSV or has no header; rows with faults
   *     are said and left out
   */
  public static Tree.@Nullable Table parse(SourceFile source, Span span, Diagnostics diagnostics) {
    return new CsvTable(source, diagnostics).table(span);
  }

  private Tree.@Nullable Table table(Span span) {
    List<CsvRecord> records = new ArrayList<>();
    try (CsvReader<CsvRecord> reader = CsvReader.builder().ofCsvRecord(source.text())) {
      reader.forEach(records::add);
    } catch (CsvParseException | java.io.IOException e) {
      Span end = new Span(source, source.text().length(), source.text().length());
      diagnostics.say(Code.CSV_SYNTAX, end, "this is not a CSV file: %s", Reason.of(e));
      return null;
    }
    if (records.isEmpty()) {
      diagnostics.say(
          Code.CSV_SYNTAX,
          new Span(source, 0, 0),
          "this table is empty: its first line must name the columns");
      return null;
    }
    List<Tree.Column> columns = columns(records.get(0));
    if (columns == null) {
      return null;
    }
    List<Tree.Row> rows = new ArrayList<>();
    for (CsvRecord record : records.subList(1, records.size())) {
      Tree.Row row = row(record);
      if (row != null) {
        rows.add(row);
      }
    }
    return new Tree.Table(null, columns, rows, span);
  }

  private @Nullable List<Tree.Column> columns(CsvRecord header) {
    startOf(header);
    List<Tree.Column> columns = new ArrayList<>();
    for (String field : header.getFields()) {
      Tree.Column column =
          parsed(field, PassbandParser::column, (ColumnContext c) -> tables.column(c));
      if (column == null) {
        return null;
      }
      columns.add(column);
    }
    return columns;
  }

  private Tree.@Nullable Row row(CsvRecord record) {
    startOf(record);
    Span line = lineOf(record);
    List<Tree.Cell> cells = new ArrayList<>();
    for (String field : record.getFields()) {
      Tree.Cell cell =
          field.isBlank()
              ? new Tree.Cell(List.of(), line)
              : parsed(field, PassbandParser::cell, (CellContext c) -> tables.cell(c));
      if (cell == null) {
        return null;
      }
      cells.add(cell);
    }
    return new Tree.Row(cells, line);
  }

  private void startOf(CsvRecord record) {
    at = source.lineStart((int) Math.min(record.getStartingLineNumber(), source.lineCount()));
  }

  private Span lineOf(CsvRecord record) {
    int start = at;
    return new Span(source, start, start + source.line(source.lineOf(start)).length());
  }

  /**
   * Parses a field with a rule of the grammar, its words placed where the field stands in the file.
   */
  private <C extends org.antlr.v4.runtime.ParserRuleContext, T> @Nullable T parsed(
      String field, Function<PassbandParser, C> rule, Function<C, T> make) {
    int found = source.text().indexOf(field, at);
    int offset = found < 0 ? at : found;
    at = found < 0 ? at : found + field.length();
    BitSet badLines = new BitSet();
    PassbandParser parser = new PassbandParser(new ListTokenStream(words(field, offset)));
    parser.removeErrorListeners();
    parser.setErrorHandler(new LineErrors());
    parser.addErrorListener(new SyntaxErrors(source, diagnostics, badLines));
    C context = rule.apply(parser);
    Token next = parser.getCurrentToken();
    if (badLines.isEmpty() && next.getType() != Token.EOF) {
      diagnostics.say(Code.SYNTAX, Lexer.span(source, next), "unexpected '%s'", next.getText());
      return null;
    }
    return badLines.isEmpty() ? make.apply(context) : null;
  }

  private List<Token> words(String field, int offset) {
    int line = source.lineOf(offset);
    List<Token> words = new ArrayList<>();
    for (CommonToken token : Lexer.lex(field)) {
      if (token.getType() != COMMENT && token.getType() != NEWLINE) {
        words.add(moved(token, offset, line));
      }
    }
    CommonToken end = new CommonToken(Token.EOF, "<end of cell>");
    end.setStartIndex(offset + field.length());
    end.setStopIndex(end.getStartIndex() - 1);
    end.setLine(line);
    words.add(end);
    return words;
  }

  private static Token moved(CommonToken token, int shift, int line) {
    token.setStartIndex(token.getStartIndex() + shift);
    token.setStopIndex(token.getStopIndex() + shift);
    token.setLine(line);
    return token;
  }
}
