package passband.detect;

/**
 * A mode on an outlet, by their names.
 *
 * @param title the mode's printed name
 * @param outlet a hyphen where there is none
 */
public record Place(String mode, String title, String outlet) {
  static Place of(SheetLine line) {
    return new Place(line.mode().name().text(), line.mode().title(), line.outletName());
  }

  /** {@code slit mono-1}. */
  public String text() {
    return outlet.equals("-") ? mode : mode + " " + outlet;
  }
}
