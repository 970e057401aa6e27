package passband.resolve;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.source.Span;
import passband.syntax.Heading;
import passband.syntax.Include;
import passband.syntax.SharedPart;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * A procedure with the lines of the parts that it includes in their places, as if they had been
 * written there.
 *
 * @param whole the procedure without {@code include}
 * @param taken the parts, each with the line that includes it, in the order in which they are met
 * @param complete whether each part that is included was found
 */
public record Included(Tree.Procedure whole, List<Taken> taken, boolean complete) {

  /** A part and the name that includes it. */
  public record Taken(SharedPart part, Include by) {}

  /** Finds parts by the names that include them. */
  public interface Finder {
    /** The part of a name; null, with the fault said, where there is none. */
    @Nullable SharedPart find(Word name);
  }

  /** The procedure, or the lines of a part, with what is included. */
  public static Included in(Tree.Procedure lines, Finder parts, Diagnostics diagnostics) {
    Work work = new Work(parts, diagnostics);
    work.around.push(new Around(lines.name(), null));
    Tree.Procedure whole = work.whole(lines);
    return new Included(whole, List.copyOf(work.taken), work.complete);
  }

  /** The block of each part, and the name that includes it. */
  public Map<Span, Span> places() {
    Map<Span, Span> places = new HashMap<>();
    taken.forEach(one -> places.put(one.part().span(), one.by().name().span()));
    return places;
  }

  /** Lines that stand at a place of others. */
  private record Placed(int at, Tree.Procedure lines) {}

  /** A procedure or a part, and what includes it; null for the outermost. */
  private record Around(Word name, @Nullable Include by) {}

  private static final class Work {
    private final Finder parts;
    private final Diagnostics diagnostics;
    private final List<Taken> taken = new ArrayList<>();
    private boolean complete = true;

    /** The procedure or the part whose lines are looked at, and those that it is in. */
    private final Deque<Around> around = new ArrayDeque<>();

    Work(Finder parts, Diagnostics diagnostics) {
      this.parts = parts;
      this.diagnostics = diagnostics;
    }

    Tree.Procedure whole(Tree.Procedure lines) {
      List<Placed> placed = new ArrayList<>();
      List<Tree.Part> stages = new ArrayList<>();
      boolean includes = false;
      for (Tree.Part one : lines.parts()) {
        if (one instanceof Include include) {
          includes = true;
          Tree.Procedure inner = included(include);
          if (inner != null) {
            placed.add(new Placed(include.name().span().start(), inner));
            stages.addAll(inner.parts());
          }
        } else {
          stages.add(one);
        }
      }
      return includes ? together(lines, placed, stages) : lines;
    }

    private Tree.@Nullable Procedure included(Include include) {
      SharedPart part = parts.find(include.name());
      if (part == null || isCircle(part, include)) {
        complete = false;
        return null;
      }
      if (isTaken(part, include)) {
        return null;
      }
      taken.add(new Taken(part, include));
      around.push(new Around(part.name(), include));
      Tree.Procedure inner = whole(part.lines());
      around.pop();
      return inner;
    }

    private boolean isCircle(SharedPart part, Include include) {
      List<Include> circle = new ArrayList<>(List.of(include));
      for (Around outer : around) {
        if (outer.name.span().equals(part.name().span())) {
          sayCircle(circle);
          return true;
        }
        if (outer.by != null) {
          circle.add(0, outer.by);
        }
      }
      return false;
    }

    /** At the last of its lines, so that it is said once, wherever it is entered. */
    private void sayCircle(List<Include> circle) {
      int last = 0;
      for (int i = 1; i < circle.size(); i++) {
        boolean later = circle.get(i).name().span().compareTo(circle.get(last).name().span()) > 0;
        last = later ? i : last;
      }
      List<String> names = new ArrayList<>();
      for (int i = 0; i <= circle.size(); i++) {
        names.add(circle.get((last + i) % circle.size()).name().text());
      }
      diagnostics.say(
          Code.INCLUDE_CYCLE,
          circle.get(last).name().span(),
          "circular include: %s",
          String.join(" → ", names));
    }

    private boolean isTaken(SharedPart part, Include include) {
      for (Taken one : taken) {
        if (one.part() == part) {
          diagnostics
              .say(
                  Code.REPEATED_ITEM,
                  include.name().span(),
                  "the part '%s' is included twice",
                  part.name().text())
              .note(one.by().name().span(), "first included here");
          return true;
        }
      }
      return false;
    }

    private Tree.Procedure together(
        Tree.Procedure own, List<Placed> placed, List<Tree.Part> stages) {
      Tree.Bench bench =
          new Tree.Bench(
              single(own, placed, Tree.Procedure::device, "the device", Word::span),
              merged(own, placed, Tree.Procedure::instruments, Tree.Instrument::span),
              merged(own, placed, Tree.Procedure::leads, Word::span));
      return new Tree.Procedure(
          own.name(),
          own.title(),
          own.revision(),
          bench,
          single(
              own, placed, Tree.Procedure::decision, "the decision rule", Heading.Decision::span),
          merged(own, placed, Tree.Procedure::cautions, Heading.Caution::span),
          order(own, placed),
          merged(own, placed, Tree.Procedure::setups, setup -> setup.name().span()),
          List.copyOf(stages),
          merged(own, placed, Tree.Procedure::allows, Tree.Allow::span),
          own.span());
    }

    private Heading.Order order(Tree.Procedure own, List<Placed> placed) {
      List<Word> phases =
          single(
              own,
              placed,
              lines -> lines.phases().isEmpty() ? null : lines.phases(),
              "the phases",
              words -> words.get(0).span());
      return new Heading.Order(
          phases == null ? List.of() : phases,
          own.byOutlet(),
          single(own, placed, Tree.Procedure::language, "the language", Word::span));
    }

    private <T> @Nullable T single(
        Tree.Procedure own,
        List<Placed> placed,
        Function<Tree.Procedure, @Nullable T> item,
        String what,
        Function<T, Span> span) {
      return diagnostics.single(
          merged(
              own,
              placed,
              lines -> {
                T one = item.apply(lines);
                return one == null ? List.of() : List.of(one);
              },
              span),
          what,
          span);
    }

    /** The items of the lines and of the parts among them, in order. */
    private static <T> List<T> merged(
        Tree.Procedure own,
        List<Placed> placed,
        Function<Tree.Procedure, List<T>> items,
        Function<T, Span> span) {
      List<T> merged = new ArrayList<>();
      int next = 0;
      for (T item : items.apply(own)) {
        for (; next < placed.size() && placed.get(next).at() < span.apply(item).start(); next++) {
          merged.addAll(items.apply(placed.get(next).lines()));
        }
        merged.add(item);
      }
      for (; next < placed.size(); next++) {
        merged.addAll(items.apply(placed.get(next).lines()));
      }
      return List.copyOf(merged);
    }
  }
}
