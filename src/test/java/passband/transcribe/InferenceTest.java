package passband.transcribe;

import org.junit.jupiter.api.Test;

class InferenceTest {
  @Test
  void measure() throws TableFault {
    Measured m = Measured.of(1, Integer.getInteger("transcribe.tables", 40), 0, 4, 30, -1);
    System.out.println(m);
    m.settledWrong.forEach(System.out::println);
  }
}
