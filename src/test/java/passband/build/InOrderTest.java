package passband.build;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Work on every processor, results in their order. */
class InOrderTest {
  private static final List<Integer> PIECES = IntStream.range(0, 200).boxed().toList();

  private static void busy(long millis) {
    long end = System.nanoTime() + millis * 1_000_000;
    while (System.nanoTime() < end) {
      LockSupport.parkNanos(100_000);
    }
  }

  @Test
  void resultsComeInTheOrderOfTheWork() throws Exception {
    List<Integer> taken = new ArrayList<>();
    InOrder.each(
        PIECES,
        piece -> {
          busy(piece % 7);
          return piece * 2;
        },
        taken::add);
    assertEquals(PIECES.stream().map(p -> p * 2).toList(), taken);
  }

  /** What comes after a failure may write to the same folder: nothing is still at work then. */
  @Test
  void afterAFailureNothingIsAtWork() {
    AtomicInteger atWork = new AtomicInteger();
    for (int i = 0; i < 20; i++) {
      int fails = i;
      IOException thrown =
          assertThrows(
              IOException.class,
              () ->
                  InOrder.each(
                      PIECES,
                      piece -> {
                        atWork.incrementAndGet();
                        try {
                          if (piece == fails) {
                            throw new IOException("no room");
                          }
                          busy(3);
                          return piece;
                        } finally {
                          atWork.decrementAndGet();
                        }
                      },
                      result -> {}));
      assertEquals("no room", thrown.getMessage());
      assertEquals(0, atWork.get());
    }
  }
}
