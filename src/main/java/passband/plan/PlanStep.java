package passband.plan;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.source.Span;
import passband.words.Language;

/**
 * One thing to do.
 *
 * @param act what it is
 * @param words the author's text; null where the sheet has words of its own
 * @param insteadOf the step of a point in whose place a block has it; null for any other
 * @param span where it is asked for: its own line, or the row of a point
 */
public record PlanStep(Act act, @Nullable Words words, @Nullable String insteadOf, Span span) {

  /** The steps of a point that a block may replace, in order. */
  public static final List<String> REPLACEABLE =
      List.of("select", "adjust", "set-load", "start", "activate", "read", "stop");

  /** What a step is. */
  public enum Kind {
    DO("do"),
    PERFORM("perform"),
    CONFIRM("confirm"),
    RECORD("record"),
    WAIT("wait"),
    REST("rest"),
    CAUTION("caution"),
    CHOOSE("choose"),
    READY("ready"),
    STAYS("stays"),
    SELECT("select"),
    ADJUST("adjust"),
    SET("set"),
    SET_LOAD("set-load"),
    SHOWN("shown"),
    START("start"),
    ACTIVATE("activate"),
    HOLD("hold"),
    READ("read"),
    STOP("stop");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    /** The word of the language, or of the step that it stands for. */
    public String word() {
      return word;
    }
  }

  /** Its kind. */
  public Kind kind() {
    return act.accept(StepKinds.INSTANCE);
  }

  /** In English, for whoever works on procedures. */
  public String text() {
    return text(Language.ENGLISH);
  }

  /** What the sheet prints. */
  public String text(Language language) {
    return StepText.of(this, language);
  }

  /** The same in the place of a point's step. */
  public PlanStep insteadOf(String step) {
    return new PlanStep(act, words, step, span);
  }

  /** Whether it is a step of a point of this kind, or what a block has in its place. */
  public boolean standsFor(Kind kind) {
    return kind() == kind || kind.word().equals(insteadOf);
  }
}
