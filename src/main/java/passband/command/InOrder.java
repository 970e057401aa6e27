package passband.command;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;

/**
 * Does independent pieces of work on every processor and hands the results over in the order of the
 * work, a few at a time, so that they never pile up.
 */
final class InOrder {
  private InOrder() {}

  /** What is done with one piece, on any thread. */
  interface Work<T, R> {
    R of(T piece) throws Usage, IOException;
  }

  /** What takes a result, on the caller's thread. */
  interface Taker<R> {
    void take(R result) throws Usage, IOException;
  }

  /** Does all; the first failure in the order of the work ends it. */
  static <T, R> void each(List<T> pieces, Work<T, R> work, Taker<R> taker)
      throws Usage, IOException {
    int threads = Math.min(Runtime.getRuntime().availableProcessors(), pieces.size());
    if (threads <= 1) {
      for (T piece : pieces) {
        taker.take(work.of(piece));
      }
      return;
    }
    ExecutorService pool = Executors.newFixedThreadPool(threads, InOrder::thread);
    try {
      Deque<Future<R>> ahead = new ArrayDeque<>();
      Iterator<T> left = pieces.iterator();
      while (left.hasNext() || !ahead.isEmpty()) {
        while (left.hasNext() && ahead.size() < threads * 4) {
          T piece = left.next();
          ahead.add(pool.submit(() -> work.of(piece)));
        }
        taker.take(result(ahead.poll()));
      }
    } finally {
      end(pool);
    }
  }

  /** Waits for what is still at work after a failure, so that nothing writes any more. */
  private static void end(ExecutorService pool) {
    pool.shutdownNow();
    try {
      pool.awaitTermination(1, TimeUnit.MINUTES);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** A thread for work on sources; the program does not wait for it to end. */
  static Thread thread(Runnable work) {
    // The parser goes as deep as a text is nested; the default of 1 MiB is the main thread's 8.
    Thread thread = new Thread(null, work, "passband", 8L << 20);
    thread.setDaemon(true);
    return thread;
  }

  private static <R> R result(Future<R> future) throws Usage, IOException {
    try {
      return future.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted");
    } catch (ExecutionException e) {
      if (e.getCause() instanceof Usage usage) {
        throw usage;
      } else if (e.getCause() instanceof IOException io) {
        throw io;
      } else if (e.getCause() instanceof RuntimeException runtime) {
        throw runtime;
      } else if (e.getCause() instanceof Error error) {
        throw error;
      }
      throw new IllegalStateException(e.getCause());
    }
  }
}
