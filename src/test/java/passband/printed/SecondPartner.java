package passband.printed;

/** The outlet that delivers at the same time as the one that is measured, on the second bench. */
final class SecondPartner {
  /** What its line says of it: outlet, mode, setting; empty for a line without. */
  private String wanted = "";

  private String contact = "";
  private String mode = "?";
  private String setting = "?";
  private boolean seen;
  private boolean on;
  private boolean came;

  /**
   * A line begins.
   *
   * @param cell what it says of another outlet; null for nothing
   */
  void line(String cell, String by) {
    wanted = cell == null ? "" : cell;
    contact = by;
    came = false;
    forget();
  }

  boolean is(String outlet) {
    return !wanted.isEmpty() && wanted.startsWith(outlet + ", ");
  }

  void select(String name) {
    mode = name;
    setting = "?";
    seen = false;
  }

  void adjust(String value) {
    setting = value;
    seen = false;
  }

  /** Something is set for another outlet. */
  void unseen() {
    seen = false;
  }

  final void forget() {
    mode = "?";
    setting = "?";
    seen = false;
  }

  /** Whether what somebody looks for is what was set. */
  boolean look(String outlet, String shown) {
    seen = is(outlet) && shown.equals(mode + ", " + setting) && wanted.endsWith(", " + shown);
    return seen;
  }

  /** Whether it may come on: by its own contact, with what the line says. */
  boolean activate(String button) {
    came = seen && contact.endsWith(", " + button);
    on = true;
    return came;
  }

  boolean release(String button) {
    boolean right = on && contact.endsWith(", " + button);
    on = false;
    return right;
  }

  boolean isOn() {
    return on;
  }

  /** Whether what the line says of it came. */
  boolean isAsWanted() {
    return wanted.isEmpty() || came;
  }

  String contact() {
    return contact;
  }
}
