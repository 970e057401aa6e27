package passband.plan;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import passband.model.Series.Segment;
import passband.quantity.Rational;

/**
 * Values that something can be set to in the one way of writing them: {@code 5, 30 to 60 step 10},
 * however the source splits or joins them.
 */
final class SeriesForm {
  /** Series of more steps are only put in order: nobody writes so many one by one. */
  private static final int MANY = 2000;

  /** So many values with one distance are a span with a step. */
  private static final int RUN = 3;

  private SeriesForm() {}

  /** Spans without a step joined where they meet, then single values and spans with one. */
  static List<Segment> of(List<Segment> segments) {
    if (segments.size() == 1 && isWhole(segments.get(0))) {
      return segments;
    }
    List<Segment> whole = new ArrayList<>();
    List<Segment> stepped = new ArrayList<>();
    for (Segment one : segments) {
      (one.count() == null ? whole : stepped).add(one);
    }
    List<Segment> joined = joined(whole);
    List<Segment> form = new ArrayList<>(joined);
    form.addAll(isLong(stepped) ? stepped : spans(values(stepped, joined)));
    form.sort(SeriesForm::order);
    return form;
  }

  /** Whether it is a span of so many steps, the last of which ends it, as one is written. */
  private static boolean isWhole(Segment one) {
    BigInteger count = one.count();
    return count != null
        && one.step() != null
        && count.compareTo(BigInteger.valueOf(RUN)) >= 0
        && one.to().minus(one.from()).over(one.step()).isInteger();
  }

  private static int order(Segment one, Segment other) {
    int from = one.from().compareTo(other.from());
    int to = from != 0 ? from : one.to().compareTo(other.to());
    return to != 0 ? to : String.valueOf(one.step()).compareTo(String.valueOf(other.step()));
  }

  private static List<Segment> joined(List<Segment> whole) {
    List<Segment> sorted = new ArrayList<>(whole);
    sorted.sort(SeriesForm::order);
    List<Segment> joined = new ArrayList<>();
    for (Segment next : sorted) {
      Segment last = joined.isEmpty() ? null : joined.get(joined.size() - 1);
      if (last == null || last.to().compareTo(next.from()) < 0) {
        joined.add(next);
      } else {
        Rational to = last.to().max(next.to());
        joined.set(joined.size() - 1, new Segment(last.from(), to, null));
      }
    }
    return joined;
  }

  private static boolean isLong(List<Segment> stepped) {
    BigInteger count = BigInteger.ZERO;
    for (Segment one : stepped) {
      BigInteger own = one.count();
      count = own == null ? count : count.add(own);
    }
    return count.compareTo(BigInteger.valueOf(MANY)) > 0;
  }

  /** Each value once, without those that a span without a step has already. */
  private static List<Rational> values(List<Segment> stepped, List<Segment> whole) {
    TreeSet<Rational> values = new TreeSet<>();
    for (Segment one : stepped) {
      Rational step = one.step();
      for (Rational v = one.from(); step != null && v.compareTo(one.to()) < 0; v = v.plus(step)) {
        values.add(v);
      }
      values.add(one.to());
    }
    values.removeIf(value -> whole.stream().anyMatch(span -> span.contains(value)));
    return new ArrayList<>(values);
  }

  /** From the least on the longest spans with one distance. */
  private static List<Segment> spans(List<Rational> values) {
    List<Segment> spans = new ArrayList<>();
    int start = 0;
    while (start < values.size()) {
      int end = end(values, start);
      if (end - start + 1 >= RUN) {
        Rational step = values.get(start + 1).minus(values.get(start));
        spans.add(new Segment(values.get(start), values.get(end), step));
        start = end + 1;
      } else {
        spans.add(new Segment(values.get(start), values.get(start), null));
        start++;
      }
    }
    return spans;
  }

  /** The last value that still has the distance of the first two. */
  private static int end(List<Rational> values, int start) {
    int end = Math.min(start + 1, values.size() - 1);
    while (end > start
        && end + 1 < values.size()
        && values
            .get(end + 1)
            .minus(values.get(end))
            .equals(values.get(start + 1).minus(values.get(start)))) {
      end++;
    }
    return end;
  }
}
