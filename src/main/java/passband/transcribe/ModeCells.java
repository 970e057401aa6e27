package passband.transcribe;

import java.util.ArrayList;
import java.util.List;

/**
 * To which mode of which outlet each row of a table belongs: a cell names it, the cell above it, or
 * a line of its own between the rows.
 */
final class ModeCells {
  private final List<String> remarks;
  private final List<ManualMode> modes = new ArrayList<>();

  /** Lines with an empty cell that the one above fills. */
  private final List<String> carried = new ArrayList<>();

  /** Of the rows that are read; empty where none was named yet, as the mode. */
  private String outlet = "";

  private String mode = "";

  /** Words of a line between rows of which it is not yet known what they are; empty for none. */
  private String pending = "";

  private int pendingLine;

  /**
   * @param remarks where is said what was taken for granted
   */
  ModeCells(List<String> remarks) {
    this.remarks = remarks;
  }

  /** All modes, in the order of the table. */
  List<ManualMode> all() {
    return modes;
  }

  /** Words between rows name the mode or the outlet of those below; behind all they are a note. */
  void between(String text, int line) {
    sayPending();
    pending = text;
    pendingLine = line;
  }

  private void sayPending() {
    if (!pending.isEmpty()) {
      remarks.add("Line " + pendingLine + " is not of the table: '" + pending + "'.");
    }
    pending = "";
  }

  /**
   * Which of the modes a row is of.
   *
   * @param hasModes whether the table has a column of modes
   */
  int of(int line, String outletCell, String modeCell, boolean hasModes) {
    if (!pending.isEmpty()) {
      take(!modeCell.isEmpty() && outletCell.isEmpty());
    } else if (hasModes && modeCell.isEmpty()) {
      carried.add(String.valueOf(line));
    }
    outlet = outletCell.isEmpty() ? outlet : outletCell;
    mode = modeCell.isEmpty() ? mode : modeCell;
    String title = !mode.isEmpty() ? mode : outlet.isEmpty() ? "Output" : outlet;
    ManualMode named = new ManualMode(outlet, title);
    if (!modes.contains(named)) {
      modes.add(named);
    }
    return modes.indexOf(named);
  }

  /** Rows that name modes of their own stand below an outlet's name. */
  private void take(boolean asOutlet) {
    if (asOutlet) {
      outlet = pending;
    } else {
      mode = pending;
    }
    remarks.add(
        "Line "
            + pendingLine
            + " was taken as the "
            + (asOutlet ? "outlet" : "mode")
            + " of the lines below it: '"
            + pending
            + "'.");
    pending = "";
  }

  /** No row follows. */
  void end() {
    sayPending();
    if (!carried.isEmpty()) {
      remarks.add(
          "An empty mode cell was taken as the mode above it: lines "
              + String.join(", ", carried)
              + ".");
    }
  }
}
