package passband.transcribe;

/** A table that cannot be transcribed; the message says where and why. */
public final class TableFault extends Exception {
  private static final long serialVersionUID = 1L;

  TableFault(String message) {
    super(message);
  }
}
