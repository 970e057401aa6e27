package passband.build;

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
import passband.library.BackgroundThread;
import passband.library.UsageException;

/**
 * Does independent pieces of work on every processor and hands the results over in the order of the
 * work, a few at a time, so that they never pile up.
 */
public final class InOrder {
  private InOrder() {}

  /** What is done with one piece, on any thread. */
  public interface Work<T, R> {
    R of(T piece) throws UsageException, IOException;
  }

  /** What takes a result, on the caller's thread. */
  public interface Taker<R> {
    void take(R result) throws UsageException, IOException;
  }

  /** Does all; the first failure in the order of the work ends it. */
  public static <T, R> void each(List<T> pieces, Work<T, R> work, Taker<R> taker)
      throws UsageException, IOException {
    int threads = Math.min(Runtime.getRuntime().availableProcessors(), pieces.size());
    if (threads <= 1) {
      for (T piece : pieces) {
        taker.take(work.of(piece));
      }
      return;
    }
    ExecutorService pool = Executors.newFixedThreadPool(threads, BackgroundThread::of);
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

  private static <R> R result(Future<R> future) throws UsageException, IOException {
    try {
      return future.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted");
    } catch (ExecutionException e) {
      if (e.getCause() instanceof UsageException usage) {
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
