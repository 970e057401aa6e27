package passband.judge;

import passband.quantity.Table;

/** What each cause means, for {@code passband explain} and the reference. */
public final class CauseManual {
  private CauseManual() {}

  /**
   * One cause.
   *
   * @param effect what it makes of its item, such as {@code unclear}
   * @param meaning what is behind it, in sentences
   */
  public record Entry(Cause.Code code, String effect, String meaning) {}

  /** Of a code. */
  public static Entry entry(Cause.Code code) {
    for (String[] row : Table.read(CauseManual.class, "causes.tsv")) {
      if (row[0].equals(code.word())) {
        return new Entry(code, row[1], row[2]);
      }
    }
    throw new IllegalStateException("there is nothing about " + code.word());
  }

  /** The page of a code. */
  public static String page(Cause.Code code) {
    Entry entry = entry(code);
    return "# "
        + code.word()
        + "\n\nA cause of the verdicts of the sheet and of 'passband judge': "
        + entry.effect
        + ".\n\n> "
        + code.pattern()
        + "\n\n"
        + entry.meaning
        + "\n";
  }
}
