package passband.sequence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;

/** Java's own streams say what each operation gives. */
class SeqTest {
  private static final Predicate<Integer> EVEN = n -> n % 2 == 0;

  private static List<List<Integer>> lists() {
    Random random = new Random(5);
    List<List<Integer>> lists = new ArrayList<>();
    lists.add(List.of());
    for (int i = 0; i < 300; i++) {
      List<Integer> list = new ArrayList<>();
      for (int j = random.nextInt(9); j >= 0; j--) {
        list.add(random.nextInt(7) - 2);
      }
      lists.add(list);
    }
    return lists;
  }

  @Test
  void givesWhatStreamsGive() {
    for (List<Integer> list : lists()) {
      Seq<Integer> seq = Seq.of(list);
      assertEquals(list, seq.toList());
      assertEquals(list.stream().filter(EVEN).toList(), seq.filter(EVEN).toList());
      assertEquals(
          list.stream().filter(EVEN).filter(n -> n > 0).map(n -> "n" + n).toList(),
          seq.filter(EVEN).filter(n -> n > 0).map(n -> "n" + n).toList());
      assertEquals(
          list.stream().filter(EVEN).flatMap(n -> List.of(n, -n).stream()).toList(),
          seq.filter(EVEN).flatMap(n -> Seq.of(List.of(n, -n))).toList());
      assertEquals(list.stream().distinct().toList(), seq.distinct().toList());
      assertEquals(list.stream().sorted().toList(), seq.sorted().toList());
      assertEquals(
          list.stream().sorted(Comparator.reverseOrder()).toList(),
          seq.sorted(Comparator.reverseOrder()).toList());
      assertEquals(list.stream().filter(EVEN).count(), seq.filter(EVEN).count());
      assertEquals(list.stream().count(), seq.count());
      assertEquals(list.stream().filter(EVEN).findFirst(), seq.filter(EVEN).findFirst());
      assertEquals(list.stream().reduce(Math::max), seq.reduce(Math::max));
      assertEquals(
          list.stream().filter(EVEN).reduce(Integer::sum), seq.filter(EVEN).reduce(Integer::sum));
    }
  }

  @Test
  void matchesAsStreamsDo() {
    for (List<Integer> list : lists()) {
      for (int bound = -3; bound < 7; bound++) {
        int least = bound;
        Predicate<Integer> above = n -> n > least;
        Seq<Integer> seq = Seq.of(list).filter(EVEN);
        assertEquals(list.stream().filter(EVEN).anyMatch(above), seq.anyMatch(above));
        assertEquals(list.stream().filter(EVEN).allMatch(above), seq.allMatch(above));
        assertEquals(list.stream().filter(EVEN).noneMatch(above), seq.noneMatch(above));
      }
    }
  }

  @Test
  void takesTheElementsInTheirOrderAndHandsOutListsThatStay() {
    List<Integer> taken = new ArrayList<>();
    Seq.of(List.of(3, 2, 4)).filter(EVEN).forEach(taken::add);
    assertEquals(List.of(2, 4), taken);
    List<Integer> list = Seq.of(taken).toList();
    assertThrows(UnsupportedOperationException.class, () -> list.add(1));
    taken.clear();
    assertEquals(List.of(2, 4), list);
  }
}
