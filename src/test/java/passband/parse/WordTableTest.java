package passband.parse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.CommonToken;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.atn.ATNConfigSet;
import org.antlr.v4.runtime.atn.LexerATNSimulator;
import org.antlr.v4.runtime.atn.PredictionContextCache;
import org.antlr.v4.runtime.dfa.DFA;
import org.antlr.v4.runtime.dfa.DFAState;
import org.junit.jupiter.api.Test;
import passband.parse.antlr.PassbandLexer;
import passband.testing.Repository;

/**
 * The table that splits texts into words is what ANTLR makes of the lexer grammar, and gives the
 * words that ANTLR's lexer gives. Run with {@code -Dgolden.write=true} after a change of the
 * grammar to write the table anew.
 */
class WordTableTest {
  private static final Path FILE = Path.of("src/main/java/passband/parse/WordTable.java");
  private static final int BEYOND = 128;

  /** ANTLR's own lexer, asked for every step that it could take. */
  private static final class Steps extends LexerATNSimulator {
    Steps(PassbandLexer lexer) {
      super(
          lexer,
          PassbandLexer._ATN,
          new DFA[] {new DFA(PassbandLexer._ATN.getDecisionState(0), 0)},
          new PredictionContextCache());
    }

    DFAState start() {
      ATNConfigSet start =
          computeStartState(CharStreams.fromString(""), atn.modeToStartState.get(mode));
      return addDFAState(start);
    }

    /** The state after a character; null when there is none. */
    DFAState after(DFAState state, int character) {
      DFAState next = computeTargetState(CharStreams.fromString(""), state, character);
      return next == ERROR ? null : next;
    }
  }

  private static String table() {
    Steps steps = new Steps(new PassbandLexer(CharStreams.fromString("")));
    Map<DFAState, Integer> numbers = new LinkedHashMap<>();
    List<DFAState> states = new ArrayList<>();
    states.add(steps.start());
    numbers.put(states.get(0), 1);
    List<int[]> rows = new ArrayList<>();
    for (int i = 0; i < states.size(); i++) {
      int[] row = new int[BEYOND + 1];
      for (int c = 0; c <= BEYOND; c++) {
        DFAState next = steps.after(states.get(i), c);
        if (next != null) {
          if (!numbers.containsKey(next)) {
            numbers.put(next, numbers.size() + 1);
            states.add(next);
          }
          row[c] = numbers.get(next);
        }
      }
      rows.add(row);
    }
    Map<List<Integer>, Integer> columns = new LinkedHashMap<>();
    StringBuilder classes = new StringBuilder();
    for (int c = 0; c <= BEYOND; c++) {
      List<Integer> column = new ArrayList<>();
      for (int[] row : rows) {
        column.add(row[c]);
      }
      columns.putIfAbsent(column, columns.size());
      classes.append(printed(columns.get(column)));
    }
    StringBuilder text = new StringBuilder();
    text.append(
        """
        package passband.parse;

        import passband.parse.antlr.PassbandLexer;

        /**
         * What the lexer grammar amounts to: a state and a character give the next state. Not written by
         * hand: this class's test makes it from ANTLR's reading of the grammar.
         *
         * <p>Numbers are characters, from '0' on: state 0 is none, 1 the first.
         */
        final class WordTable {
          /** The column of each ASCII character, and last that of any other. */
          static final String COLUMNS =
        """);
    append(text, classes.toString());
    text.append("\n  /** For each state from 1 the next states, a column each. */\n");
    text.append("  static final String[] NEXT = {\n");
    for (int[] row : rows) {
      StringBuilder line = new StringBuilder();
      for (List<Integer> column : columns.keySet()) {
        line.append(printed(column.get(rows.indexOf(row))));
      }
      text.append("    \"").append(line).append("\",\n");
    }
    text.append("  };\n\n");
    text.append(
        "  /** For each state from 1 the token that a word ending there is; 0 where none ends. */\n");
    text.append("  static final int[] TOKENS = {\n");
    for (DFAState state : states) {
      String name = PassbandLexer.VOCABULARY.getSymbolicName(state.prediction);
      text.append("    ").append(state.isAcceptState ? "PassbandLexer." + name : "0").append(",\n");
    }
    text.append("  };\n");
    return text + "\n  private WordTable() {}\n}\n";
  }

  private static void append(StringBuilder text, String constant) {
    int width = 80;
    for (int i = 0; i < constant.length(); i += width) {
      String part = constant.substring(i, Math.min(i + width, constant.length()));
      boolean last = i + width >= constant.length();
      text.append(i == 0 ? "      \"" : "          + \"").append(part).append('"');
      text.append(last ? ";\n" : "\n");
    }
  }

  private static String printed(int number) {
    char c = (char) ('0' + number);
    assertTrue(c < 0x7F, "more than fits into the table: " + number);
    return c == '\\' ? "\\\\" : String.valueOf(c);
  }

  @Test
  void theTableIsWhatTheGrammarSays() throws IOException {
    if (Boolean.getBoolean("golden.write")) {
      Files.writeString(Repository.ROOT.resolve(FILE), table());
    }
    assertEquals(table(), Repository.text(FILE), "stale: run the tests with -Dgolden.write=true");
  }

  /** Every source of the library whole, and cut and spoilt at random. */
  @Test
  void theWordsAreThoseOfAntlr() {
    Random random = new Random(11);
    String spoilers = "\"\\#{}()|,.=+-*^%/ \t\r\n0123456789eEabZ_~$\u0000é°Ω\u2028𝄞";
    int[] characters = spoilers.codePoints().toArray();
    int words = 0;
    for (Path file : Repository.files(Repository.PROCEDURES, ".pband")) {
      String text = Repository.text(file);
      words += same(text);
      for (int i = 0; i < 40; i++) {
        StringBuilder spoilt = new StringBuilder(text.substring(random.nextInt(text.length())));
        spoilt.setLength(Math.min(spoilt.length(), 600));
        for (int j = 0; j < 30; j++) {
          int at = random.nextInt(spoilt.length() + 1);
          spoilt.insert(at, Character.toString(characters[random.nextInt(characters.length)]));
        }
        words += same(spoilt.toString().replaceAll("\\p{Cs}", "x"));
      }
    }
    for (int i = 0; i < 20_000; i++) {
      StringBuilder text = new StringBuilder();
      for (int j = random.nextInt(12); j >= 0; j--) {
        text.appendCodePoint(characters[random.nextInt(characters.length)]);
      }
      words += same(text.toString());
    }
    assertTrue(words > 100_000, words + " words");
  }

  /** Compares type, place and text of every word, and gives their number. */
  private static int same(String text) {
    PassbandLexer lexer = new PassbandLexer(CharStreams.fromString(text));
    lexer.removeErrorListeners();
    List<String> wanted = new ArrayList<>();
    for (Token token : lexer.getAllTokens()) {
      int from = text.offsetByCodePoints(0, token.getStartIndex());
      int to = text.offsetByCodePoints(0, token.getStopIndex() + 1);
      wanted.add(token.getType() + " " + from + " " + to + " " + token.getText());
    }
    List<String> found = new ArrayList<>();
    for (CommonToken token : Scanner.words(text)) {
      assertEquals(
          text.substring(0, token.getStartIndex()).split("\r\n|\r|\n", -1).length, token.getLine());
      found.add(
          token.getType()
              + " "
              + token.getStartIndex()
              + " "
              + (token.getStopIndex() + 1)
              + " "
              + token.getText());
    }
    assertEquals(String.join("\n", wanted), String.join("\n", found), text);
    return found.size();
  }
}
