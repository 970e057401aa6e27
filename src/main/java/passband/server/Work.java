package passband.server;

import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

/**
 * The server's two threads: one does everything in the order of the messages, the other what takes
 * long. A fault of this program ends the piece of work that it is in, never a thread.
 */
final class Work {
  private static final long STACK_BYTES = 16L << 20;

  private final ScheduledExecutorService worker =
      Executors.newSingleThreadScheduledExecutor(Work::thread);
  private final ExecutorService finder = Executors.newSingleThreadExecutor(Work::thread);
  private final Consumer<Throwable> report;

  /**
   * @param report tells the editor of a fault of this program
   */
  Work(Consumer<Throwable> report) {
    this.report = report;
  }

  private static Thread thread(Runnable work) {
    Thread thread = new Thread(null, work, "passband server", STACK_BYTES);
    thread.setDaemon(true);
    return thread;
  }

  /** Does this after what came in before. */
  void inOrder(Runnable work) {
    worker.execute(() -> guarded(work));
  }

  /** Does this when so much time has passed, between what comes in meanwhile. */
  void inOrderAfter(long millis, Runnable work) {
    worker.schedule(() -> guarded(work), millis, TimeUnit.MILLISECONDS);
  }

  /** Does this on the other thread. */
  void aside(Runnable work) {
    finder.execute(() -> guarded(work));
  }

  void report(Throwable fault) {
    report.accept(fault);
  }

  private void guarded(Runnable work) {
    try {
      work.run();
    } catch (RuntimeException | StackOverflowError e) {
      report(e);
    }
  }
}
