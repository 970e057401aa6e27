import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.atn.ATN;
import org.antlr.v4.runtime.atn.ATNConfigSet;
import org.antlr.v4.runtime.atn.ATNDeserializer;
import org.antlr.v4.runtime.atn.LexerATNSimulator;
import org.antlr.v4.runtime.atn.PredictionContextCache;
import org.antlr.v4.runtime.dfa.DFA;
import org.antlr.v4.runtime.dfa.DFAState;

/**
 * Writes the source of a table that splits texts into tokens as ANTLR's lexer would, from what
 * ANTLR has read out of the lexer grammar. ANTLR's lexer finds the same table out step by step each
 * time a program starts.
 *
 * <p>usage: java -cp antlr4-runtime.jar LexerTableMaker.java LEXER.interp LexerTable.java
 */
public final class LexerTableMaker {
  /** The character that stands for all beyond ASCII, which the grammar treats alike. */
  private static final int BEYOND = 128;

  /** The tokens' names by their numbers. */
  private final List<String> names;

  private final Steps steps;
  private final List<DFAState> states = new ArrayList<>();

  /** For each state the number of the next one after each character; 0 where there is none. */
  private final List<int[]> rows = new ArrayList<>();

  private LexerTableMaker(List<String> names, ATN atn) {
    this.names = names;
    this.steps = new Steps(atn);
  }

  public static void main(String[] arguments) throws IOException {
    Map<String, List<String>> read = sections(Files.readAllLines(Path.of(arguments[0])));
    String atn = read.get("atn").get(0);
    int[] numbers =
        Stream.of(atn.substring(1, atn.length() - 1).split(", "))
            .mapToInt(Integer::parseInt)
            .toArray();
    LexerTableMaker maker =
        new LexerTableMaker(
            read.get("token symbolic names"), new ATNDeserializer().deserialize(numbers));
    maker.explore();
    write(Path.of(arguments[1]), maker.source());
  }

  /** The lines under each heading of ANTLR's file. */
  private static Map<String, List<String>> sections(List<String> lines) {
    Map<String, List<String>> sections = new LinkedHashMap<>();
    List<String> section = null;
    for (String line : lines) {
      if (line.endsWith(":")) {
        section = new ArrayList<>();
        sections.put(line.substring(0, line.length() - 1), section);
      } else if (!line.isEmpty()) {
        section.add(line);
      }
    }
    return sections;
  }

  /** Leaves a file alone that is as it should be, so that nothing is compiled anew. */
  private static void write(Path file, String text) throws IOException {
    if (!Files.exists(file) || !Files.readString(file).equals(text)) {
      Files.createDirectories(file.getParent());
      Files.writeString(file, text);
    }
  }

  /** ANTLR's own lexer, asked for every step that it could take. */
  private static final class Steps extends LexerATNSimulator {
    Steps(ATN atn) {
      super(atn, new DFA[] {new DFA(atn.getDecisionState(0), 0)}, new PredictionContextCache());
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

  private void explore() {
    Map<DFAState, Integer> numbers = new LinkedHashMap<>();
    states.add(steps.start());
    numbers.put(states.get(0), 1);
    for (int i = 0; i < states.size(); i++) {
      int[] row = new int[BEYOND + 1];
      for (int c = 0; c <= BEYOND; c++) {
        DFAState next = steps.after(states.get(i), c);
        if (next != null && numbers.putIfAbsent(next, numbers.size() + 1) == null) {
          states.add(next);
        }
        row[c] = next == null ? 0 : numbers.get(next);
      }
      rows.add(row);
    }
  }

  /** The columns that differ, each with its number, in the order of the first character of each. */
  private Map<List<Integer>, Integer> columns() {
    Map<List<Integer>, Integer> columns = new LinkedHashMap<>();
    for (int c = 0; c <= BEYOND; c++) {
      columns.putIfAbsent(column(c), columns.size());
    }
    return columns;
  }

  private List<Integer> column(int character) {
    return rows.stream().map(row -> row[character]).toList();
  }

  private String source() {
    Map<List<Integer>, Integer> columns = columns();
    StringBuilder classes = new StringBuilder();
    for (int c = 0; c <= BEYOND; c++) {
      classes.append(printed(columns.get(column(c))));
    }
    StringBuilder next = new StringBuilder();
    StringBuilder tokens = new StringBuilder();
    for (int i = 0; i < states.size(); i++) {
      next.append("    \"");
      for (List<Integer> column : columns.keySet()) {
        next.append(printed(column.get(i)));
      }
      next.append("\",\n");
      tokens.append("    ").append(token(states.get(i))).append(",\n");
    }
    return """
        package passband.parse;

        import passband.parse.antlr.PassbandLexer;

        /**
         * What the lexer grammar amounts to: a state and a character give the next state. Made by the
         * build. Numbers are characters, from '0' on: state 0 is none, 1 the first.
         */
        final class LexerTable {
          /** The column of each ASCII character, and last that of any other. */
          static final String COLUMNS =
              "%s";

          /** For each state from 1 the next states, a column each. */
          static final String[] NEXT = {
        %s  };

          /** For each state from 1 the token that ends there; 0 where none does. */
          static final int[] TOKENS = {
        %s  };

          private LexerTable() {}
        }
        """
        .formatted(classes, next, tokens);
  }

  private String token(DFAState state) {
    return state.isAcceptState ? "PassbandLexer." + names.get(state.prediction) : "0";
  }

  private static String printed(int number) {
    char c = (char) ('0' + number);
    if (c >= 0x7F) {
      throw new IllegalStateException("more than fits into the table: " + number);
    }
    return c == '\\' ? "\\\\" : String.valueOf(c);
  }
}
