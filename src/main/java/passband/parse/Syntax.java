package passband.parse;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.antlr.v4.runtime.BailErrorStrategy;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.atn.PredictionMode;
import org.antlr.v4.runtime.misc.ParseCancellationException;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.parse.antlr.PassbandLexer;
import passband.parse.antlr.PassbandParser;
import passband.source.SourceFile;
import passband.syntax.Tree;

/** From a file's text to its tree. */
public final class Syntax {
  /** How many parentheses and operators a line may hold; an author's never come near. */
  static final int DEEPEST = 100;

  private Syntax() {}

  /** Sets the parser up, which takes as long as to parse a file. */
  public static void ready() {
    PassbandParser._ATN.getNumberOfDecisions();
  }

  /**
   * Parses one file. What is wrong goes to the diagnostics, at most one syntax fault for each line;
   * lines with a fault are missing from the tree.
   */
  public static Tree.File parse(SourceFile source, Diagnostics diagnostics) {
    Diagnostics faults = new Diagnostics();
    Tree.File file = parsed(source, faults);
    if (faults.hasErrors()) {
      Notations.say(source, faults, diagnostics);
    } else {
      diagnostics.take(faults);
    }
    return file;
  }

  /** The same without hints for what is written in another notation. */
  static Tree.File parsed(SourceFile source, Diagnostics diagnostics) {
    BitSet badLines = new BitSet();
    List<Token> words = Lexer.of(source, diagnostics, badLines);
    words = Depth.limited(source, words, diagnostics, badLines);
    List<Token> lines = Layout.of(source, words, diagnostics, badLines);
    PassbandParser.FileContext file = quick(lines);
    if (file != null) {
      return new TreeBuilder(source, diagnostics, true).file(file);
    }
    SyntaxErrors errors = new SyntaxErrors(source, diagnostics, badLines);
    return new TreeBuilder(source, diagnostics, false).file(thorough(lines, errors));
  }

  /**
   * The words of a sound file laid out: every statement ends in one NEWLINE token, and so does each
   * brace; line ends inside a statement and comments are left out.
   */
  public static List<Token> laidOut(SourceFile source) {
    Diagnostics none = new Diagnostics();
    BitSet lines = new BitSet();
    return Layout.of(source, Lexer.of(source, none, lines), none, lines);
  }

  /** The comments of a file, in order. */
  public static List<Token> comments(SourceFile source) {
    List<Token> comments = new ArrayList<>();
    for (Token token : Lexer.lex(source.text())) {
      if (token.getType() == PassbandLexer.COMMENT) {
        comments.add(token);
      }
    }
    return comments;
  }

  /** The first stage alone: null when the text needs the second. */
  static PassbandParser.@Nullable FileContext quick(List<Token> lines) {
    PassbandParser parser = parser(lines);
    parser.getInterpreter().setPredictionMode(PredictionMode.SLL);
    parser.setErrorHandler(new BailErrorStrategy());
    try {
      return parser.file();
    } catch (ParseCancellationException e) {
      return null;
    }
  }

  private static PassbandParser.FileContext thorough(List<Token> lines, SyntaxErrors errors) {
    PassbandParser parser = parser(lines);
    parser.getInterpreter().setPredictionMode(PredictionMode.LL);
    parser.setErrorHandler(new LineErrors());
    parser.addErrorListener(errors);
    return parser.file();
  }

  private static PassbandParser parser(List<Token> lines) {
    PassbandParser parser = new PassbandParser(new ListTokenStream(lines));
    parser.removeErrorListeners();
    return parser;
  }
}
