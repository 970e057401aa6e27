package passband.parse;

import static passband.parse.antlr.PassbandLexer.*;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The kinds of block, the words that lead a line in each, and which of those lines open a block in
 * turn.
 */
enum BlockKind {
  IN_FILE,
  IN_DEVICE,
  IN_OUTLET,
  IN_MODE,
  IN_STATE,
  IN_ANALYZER,
  IN_LOAD,
  IN_MEASURE,
  IN_RANGE,
  IN_LEADS,
  IN_RULE,
  IN_PROCEDURE,
  IN_PART,
  IN_SECTION,
  IN_STEPS,
  IN_SETUP,
  IN_SETUPS,
  IN_TESTS,
  IN_TEST,
  IN_TABLE;

  private final Map<Integer, Line> lines = new HashMap<>();

  /**
   * What a line that starts with a word may go on to: a block of a kind (null: none), which it may
   * or must have.
   */
  private record Line(@Nullable BlockKind opens, boolean always) {}

  static {
    IN_FILE.plain(USE);
    IN_FILE.block(DEVICE, IN_DEVICE);
    IN_FILE.block(ANALYZER, IN_ANALYZER);
    IN_FILE.block(LEADS, IN_LEADS);
    IN_FILE.block(RULE, IN_RULE);
    IN_FILE.block(PROCEDURE, IN_PROCEDURE);
    IN_FILE.block(PART, IN_PART);
    IN_DEVICE.plain(ACTION, SETTING, ALLOW);
    IN_DEVICE.perhaps(OUTLET, IN_OUTLET);
    IN_DEVICE.block(MODE, IN_MODE);
    IN_DEVICE.block(STATE, IN_STATE);
    IN_DEVICE.block(MEASURE, IN_MEASURE);
    IN_OUTLET.plain(POLE, CONTACT, EARTH, JOIN);
    IN_MODE.plain(SETTING, LOAD, OUTPUT, DUTY, ACTIVATE, ALLOW);
    IN_STATE.plain(ENTER, LEAVE);
    IN_ANALYZER.plain(JACK, KEY, ACTION, SETTLE, READS, SETTING, ALLOW);
    IN_ANALYZER.block(LOAD, IN_LOAD);
    IN_ANALYZER.block(MEASURE, IN_MEASURE);
    IN_LOAD.plain(VALUES, ERROR, POWER, JOIN);
    IN_MEASURE.plain(RESOLUTION, ERROR);
    IN_MEASURE.perhaps(RANGE, IN_RANGE);
    IN_RANGE.plain(RESOLUTION, ERROR);
    IN_LEADS.plain(LEAD, LINK, ACCESSORY, ALLOW);
    IN_RULE.plain(DERIVE, ACCEPT, ALLOW);
    IN_PROCEDURE.plain(REVISION, ORDER);
    IN_PROCEDURE.ofProcedure();
    IN_PART.ofProcedure();
    IN_SECTION.plain(WHEN, DO, CONFIRM, RECORD, WAIT, CAUTION, PERFORM, CHOOSE);
    IN_STEPS.plain(DO, CONFIRM, RECORD, WAIT, CAUTION, PERFORM, CHOOSE);
    IN_SETUPS.plain(CONNECT, LINK);
    IN_SETUPS.block(TABLE, IN_TABLE);
    IN_SETUPS.block(SETUP, IN_SETUP);
    IN_SETUP.plain(CONNECT, LINK, ALLOW);
    IN_TESTS.plain(OUTLET, SETUP, INSIDE, WHEN, OUTPUT, ON_TIME, ACCEPT);
    IN_TESTS.block(TABLE, IN_TABLE);
    IN_TESTS.block(TEST, IN_TEST);
    IN_TEST.plain(OUTLET, SETUP, INSIDE, WHEN, OUTPUT, ON_TIME, ACCEPT, SWEEP, DERIVE, ALLOW);
    IN_TEST.perhaps(TABLE, IN_TABLE);
    IN_TEST.block(BEFORE, IN_STEPS);
    IN_TEST.block(EACH, IN_STEPS);
    IN_TEST.block(AFTER, IN_STEPS);
  }

  /** What a procedure may have, whether it writes it itself or takes it in. */
  private void ofProcedure() {
    plain(DEVICE, ANALYZER, LEADS, DECISION, CAUTION, PHASES, LANGUAGE, GATE, INCLUDE, ALLOW);
    block(SECTION, IN_SECTION);
    block(SETUP, IN_SETUP);
    block(SETUPS, IN_SETUPS);
    block(TEST, IN_TEST);
    block(TESTS, IN_TESTS);
    block(ADJUST, IN_STEPS);
  }

  private void plain(int... words) {
    for (int word : words) {
      lines.put(word, new Line(null, false));
    }
  }

  private void block(int word, BlockKind kind) {
    lines.put(word, new Line(kind, true));
  }

  private void perhaps(int word, BlockKind kind) {
    lines.put(word, new Line(kind, false));
  }

  /** Whether a line of this block may start with the word. */
  boolean knows(int word) {
    return lines.containsKey(word);
  }

  /** The kind of block that a line with this word opens; null when it opens none. */
  @Nullable BlockKind opens(int word) {
    Line line = lines.get(word);
    return line == null ? null : line.opens;
  }

  /** Whether a line with this word is incomplete without its block. */
  boolean opensAlways(int word) {
    Line line = lines.get(word);
    return line != null && line.always;
  }

  /** The words that lead its lines, as written. */
  List<String> words() {
    List<String> words = new ArrayList<>();
    for (int word : lines.keySet()) {
      words.add(Keywords.written(word));
    }
    words.sort(null);
    return words;
  }

  /** The token type of a word that leads a line here; 0 when there is none. */
  int typeOf(String text) {
    for (int word : lines.keySet()) {
      if (text.equals(Keywords.written(word))) {
        return word;
      }
    }
    return 0;
  }
}
