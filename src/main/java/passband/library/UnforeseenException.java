package passband.library;

import java.io.IOException;

/** A failure that no one has foreseen, a fault of this program, with what was being worked on. */
public final class UnforeseenException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final String place;

  private UnforeseenException(String place, Throwable cause) {
    super(cause);
    this.place = place;
  }

  /** Work that may fail in ways that are foreseen. */
  public interface Work<T> {
    /** Does it. */
    T done() throws UsageException, IOException;
  }

  /**
   * Does a piece of work, and names its place when it fails in a way that is not foreseen.
   *
   * @param place the file or procedure, as messages call it
   */
  public static <T> T at(String place, Work<T> work) throws UsageException, IOException {
    try {
      return work.done();
    } catch (UnforeseenException e) {
      throw e;
    } catch (RuntimeException | Error e) {
      throw new UnforeseenException(place, e);
    }
  }

  /** The file or procedure that was being worked on. */
  public String place() {
    return place;
  }
}
