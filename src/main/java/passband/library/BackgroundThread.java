package passband.library;

/** Threads for work on sources; the program does not wait for them to end. */
public final class BackgroundThread {
  /** The parser recurses as deep as a text is nested; the default stack of a thread is 1 MiB. */
  private static final long STACK_BYTES = 8L << 20;

  private BackgroundThread() {}

  /** A thread that is not started yet. */
  public static Thread of(Runnable work) {
    Thread thread = new Thread(null, work, "passband", STACK_BYTES);
    thread.setDaemon(true);
    // What fails here fails again where its result is asked for, and is said there.
    thread.setUncaughtExceptionHandler((failed, failure) -> {});
    return thread;
  }
}
