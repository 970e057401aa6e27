package passband.plan;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One thing to do, in final words.
 *
 * @param kind what is done
 * @param name the name of a record, choice or caution; null for others
 * @param text what the sheet prints
 * @param unit the printed unit of a record; null where it has none
 * @param outcomes of a choice; empty for others
 * @param pass the outcome that passes; null when any will do
 * @param seconds of a wait, as printed; null for others
 */
public record PlanStep(
    Kind kind,
    @Nullable String name,
    String text,
    @Nullable String unit,
    List<String> outcomes,
    @Nullable String pass,
    @Nullable String seconds) {

  /** The steps of a point that a block may replace, in order. */
  public static final List<String> REPLACEABLE =
      List.of("select", "adjust", "set-load", "start", "activate", "read", "stop");

  /** What a step is. */
  public enum Kind {
    DO("do"),
    CONFIRM("confirm"),
    RECORD("record"),
    WAIT("wait"),
    CAUTION("caution"),
    CHOOSE("choose"),
    SELECT("select"),
    ADJUST("adjust"),
    SET("set"),
    SET_LOAD("set-load"),
    START("start"),
    ACTIVATE("activate"),
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

  /** A step that is all said in its text. */
  public static PlanStep of(Kind kind, String text) {
    return new PlanStep(kind, null, text, null, List.of(), null, null);
  }
}
