package passband.faults;

import java.util.ArrayDeque;
import java.util.Deque;
import passband.source.Span;

/**
 * Where a fault is in the file that has it: the changed lines, and the innermost block around them,
 * head and all, as it was before the fault. What is in no block has the whole file; what is missing
 * altogether has no line of its own, but the declaration that it is missing in.
 *
 * @param start offsets in the faulty text
 */
record FaultPlace(String file, int start, int end) {

  /** The place of a fault in a text without it. */
  static FaultPlace of(SeededFault fault, String clean) {
    int at = clean.indexOf(fault.before());
    int head = common(fault.before(), fault.after());
    int tail =
        common(reversed(fault.before().substring(head)), reversed(fault.after().substring(head)));
    int from = at + head;
    int to = at + fault.before().length() - tail;
    int longer = fault.after().length() - fault.before().length();
    boolean gone = fault.after().length() == head + tail;
    int[] block = block(clean, from, to, gone);
    return new FaultPlace(fault.file(), block[0], block[1] + longer);
  }

  private static int common(String one, String other) {
    int same = 0;
    while (same < Math.min(one.length(), other.length())
        && one.charAt(same) == other.charAt(same)) {
      same++;
    }
    return same;
  }

  private static String reversed(String text) {
    return new StringBuilder(text).reverse().toString();
  }

  /** The innermost block that holds both offsets, or the outermost. */
  private static int[] block(String text, int from, int to, boolean outermost) {
    int[] inner = {0, text.length()};
    Deque<Integer> open = new ArrayDeque<>();
    for (int line = 0; line < text.length(); line = text.indexOf('\n', line) + 1) {
      int end = text.indexOf('\n', line);
      String words = text.substring(line, end).strip();
      if (words.endsWith("{")) {
        open.push(line);
      } else if (words.equals("}")) {
        int start = open.pop();
        boolean holds = start <= from && end >= to;
        if (holds && (open.isEmpty() || !outermost) && end - start < inner[1] - inner[0]) {
          inner = new int[] {start, end};
        }
      }
    }
    return inner;
  }

  /** Whether something that was said is about the place. */
  boolean holds(Span span) {
    return span.file().path().equals(file) && span.start() <= end && span.end() >= start;
  }
}
