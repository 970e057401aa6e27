package passband.printed;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import passband.printed.PrintedSheet.Heading;
import passband.printed.PrintedSheet.Mark;
import passband.printed.PrintedSheet.OnlyIf;

/** What is left of a sheet when some of its adjustments are not made, as its pages say. */
final class Branches {
  private static final float PART = 13;

  private static final float OUTLET = 24;
  private static final Pattern NAMED = Pattern.compile("\u201c(.+?)\u201d");

  private static final Pattern ANSWER = Pattern.compile("the answer to \u201c.+?(?=; otherwise)");

  private Branches() {}

  /** Whether this is said of an adjustment itself. */
  static boolean isAdjustment(OnlyIf only) {
    return only.text().startsWith("Only if needed;");
  }

  /** The titles of the adjustments. */
  static Set<String> adjustments(List<Mark> marks) {
    Set<String> titles = new TreeSet<>();
    String title = "";
    for (Mark mark : marks) {
      if (mark instanceof Heading heading && heading.size() == PART) {
        title = heading.text();
      } else if (mark instanceof OnlyIf only && isAdjustment(only)) {
        titles.add(title);
      } else if (mark instanceof OnlyIf only) {
        titles.addAll(options(only));
      }
    }
    return titles;
  }

  /** The answer that has to have been given; none where it is not said of an answer. */
  private static List<String> options(OnlyIf only) {
    Matcher matcher = ANSWER.matcher(only.text());
    return matcher.find() ? List.of(matcher.group()) : List.of();
  }

  /** What the second bench says of every branch, whichever adjustments are left out. */
  static List<String> objections(List<Mark> marks, SheetWords words) {
    List<String> objections = new ArrayList<>();
    for (Set<String> left : subsets(adjustments(marks))) {
      List<Mark> done = without(left, marks);
      for (String objection : SecondBench.work(done, words).objections()) {
        objections.add((left.isEmpty() ? "" : "without " + left + ", ") + objection);
      }
    }
    return objections;
  }

  /** Every set of adjustments that may be left out. */
  static List<Set<String>> subsets(Set<String> titles) {
    List<Set<String>> subsets = new ArrayList<>(List.of(Set.of()));
    for (String title : titles) {
      for (Set<String> set : List.copyOf(subsets)) {
        Set<String> more = new TreeSet<>(set);
        more.add(title);
        subsets.add(more);
      }
    }
    return subsets;
  }

  /** The marks of the parts that are done when these adjustments are not made. */
  static List<Mark> without(Set<String> left, List<Mark> marks) {
    List<Mark> done = new ArrayList<>();
    int from = 0;
    while (from < marks.size()) {
      int to = from + 1;
      while (to < marks.size() && !beginsPart(marks, to)) {
        to++;
      }
      List<Mark> part = marks.subList(from, to);
      if (isDone(part, left)) {
        done.addAll(part);
      }
      from = to;
    }
    return done;
  }

  /** A part begins with its heading, or with the outlet's name above that. */
  private static boolean beginsPart(List<Mark> marks, int at) {
    boolean named = at > 0 && hasSize(marks.get(at - 1), OUTLET);
    return hasSize(marks.get(at), OUTLET) || (hasSize(marks.get(at), PART) && !named);
  }

  private static boolean hasSize(Mark mark, float size) {
    return mark instanceof Heading heading && heading.size() == size;
  }

  private static boolean isDone(List<Mark> part, Set<String> left) {
    for (Mark mark : part) {
      if (mark instanceof OnlyIf only) {
        return isAdjustment(only)
            ? !left.contains(((Heading) part.get(0)).text())
            : options(only).stream().noneMatch(left::contains) && madeOne(only, left);
      }
    }
    return true;
  }

  /** Whether one of the adjustments was made that it names. */
  private static boolean madeOne(OnlyIf only, Set<String> left) {
    String made = ANSWER.matcher(only.text()).replaceAll("");
    return !made.contains(" was made;") || !left.containsAll(named(made));
  }

  private static Set<String> named(String only) {
    Set<String> titles = new TreeSet<>();
    Matcher matcher = NAMED.matcher(only);
    while (matcher.find()) {
      titles.add(matcher.group(1));
    }
    if (titles.isEmpty()) {
      throw new IllegalArgumentException(only);
    }
    return titles;
  }
}
