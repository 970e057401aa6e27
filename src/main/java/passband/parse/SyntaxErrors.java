package passband.parse;

import static passband.parse.antlr.PassbandLexer.*;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashSet;
import java.util.List;
import org.antlr.v4.runtime.BaseErrorListener;
import org.antlr.v4.runtime.NoViableAltException;
import org.antlr.v4.runtime.Parser;
import org.antlr.v4.runtime.RecognitionException;
import org.antlr.v4.runtime.Recognizer;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.misc.IntervalSet;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.source.SourceFile;

/** Says what the parser stumbled over, once a line and in the words of the language. */
final class SyntaxErrors extends BaseErrorListener {
  private static final int MOST_NAMED = 6;

  private final SourceFile source;
  private final Diagnostics diagnostics;
  private final BitSet badLines;

  SyntaxErrors(SourceFile source, Diagnostics diagnostics, BitSet badLines) {
    this.source = source;
    this.diagnostics = diagnostics;
    this.badLines = badLines;
  }

  @Override
  public void syntaxError(
      Recognizer<?, ?> recognizer,
      Object symbol,
      int line,
      int column,
      String message,
      RecognitionException e) {
    Token at = e instanceof NoViableAltException noWay ? furthest(noWay) : (Token) symbol;
    if (badLines.get(at.getLine())) {
      return;
    }
    badLines.set(at.getLine());
    String expected = e == null ? "" : expected((Parser) recognizer, e);
    diagnostics.say(Code.SYNTAX, Lexer.span(source, at), "%s%s", found(at), expected);
  }

  private static Token furthest(NoViableAltException e) {
    return e.getOffendingToken();
  }

  private static String found(Token at) {
    return switch (at.getType()) {
      case NEWLINE -> "unexpected end of line";
      case LBRACE -> "unexpected '{'";
      case RBRACE -> "unexpected '}'";
      case Token.EOF -> "unexpected end of file";
      default -> "unexpected '" + cut(at.getText()) + "'";
    };
  }

  private static String cut(String text) {
    return text.length() <= 40 ? text : text.substring(0, text.offsetByCodePoints(0, 30)) + "…";
  }

  private static String expected(Parser parser, RecognitionException e) {
    IntervalSet set = e.getExpectedTokens();
    if (set == null || e instanceof NoViableAltException) {
      return "";
    }
    List<String> names = new ArrayList<>();
    if (set.contains(NAME) && set.contains(ACCEPT)) {
      names.add("a name");
      if (set.contains(NUMBER)) {
        names.add("a number");
      }
      if (set.contains(TEXT)) {
        names.add("a text");
      }
    } else {
      for (int type : set.toList()) {
        names.add(shown(parser, type));
      }
    }
    return names.isEmpty() || names.size() > MOST_NAMED ? "" : ": expected " + joined(names);
  }

  private static String shown(Parser parser, int type) {
    return switch (type) {
      case NAME -> "a name";
      case NUMBER -> "a number";
      case TEXT -> "a text in \"…\"";
      case DATE -> "a date such as 2026-10-02";
      case NEWLINE -> "the end of the line";
      case DIVIDE, SLASH -> "'/'";
      case Token.EOF -> "the end of the file";
      default ->
          Keywords.written(type) == null
              ? parser.getVocabulary().getDisplayName(type)
              : "'" + Keywords.written(type) + "'";
    };
  }

  private static String joined(List<String> names) {
    List<String> distinct = List.copyOf(new LinkedHashSet<>(names));
    int last = distinct.size() - 1;
    return last == 0
        ? distinct.get(0)
        : String.join(", ", distinct.subList(0, last)) + " or " + distinct.get(last);
  }
}
