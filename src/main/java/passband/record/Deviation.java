package passband.record;

import passband.judge.Judgement;

/**
 * Something that was done otherwise than the procedure says, or a remark.
 *
 * @param attempt its number as written; empty for the first
 * @param by who did it, where the readings say so; else empty
 * @param reason in the words of who did it; empty where none was given
 */
public record Deviation(Kind kind, Judgement judgement, String attempt, String by, String reason) {

  /** What was done otherwise. */
  public enum Kind {
    NOT_DONE("not done"),
    REPEATED("read again"),
    REMARK("remark");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    /** As printed. */
    public String word() {
      return word;
    }
  }
}
