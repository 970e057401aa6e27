package passband.sequence;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.function.BinaryOperator;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * What the compiler needs of Java's streams, under the same names, over collections that are there.
 * Between reading a source and its verdict it stands for them: to set streams up takes a tenth of a
 * check of one file, and to run them a tenth of a check of many.
 *
 * @param <T> the elements
 */
public final class Seq<T> {
  private final Collection<? extends T> elements;
  private final @Nullable Predicate<? super T> taken;

  private Seq(Collection<? extends T> elements, @Nullable Predicate<? super T> taken) {
    this.elements = elements;
    this.taken = taken;
  }

  /** The elements of a collection, in its order; it is not to change meanwhile. */
  public static <T> Seq<T> of(Collection<? extends T> elements) {
    return new Seq<>(elements, null);
  }

  /** The elements for which it is true; it is asked when they are taken, as often as they are. */
  public Seq<T> filter(Predicate<? super T> wanted) {
    return new Seq<>(taken == null ? elements : list(), wanted);
  }

  /** What becomes of each element. */
  public <R> Seq<R> map(Function<? super T, ? extends R> change) {
    List<R> changed = new ArrayList<>(elements.size());
    for (T element : elements) {
      if (takes(element)) {
        changed.add(change.apply(element));
      }
    }
    return of(changed);
  }

  /** What the elements give, one after the other. */
  public <R> Seq<R> flatMap(Function<? super T, Seq<R>> parts) {
    List<R> all = new ArrayList<>();
    for (T element : elements) {
      if (takes(element)) {
        parts.apply(element).forEach(all::add);
      }
    }
    return of(all);
  }

  /** Each once, where it comes first. */
  public Seq<T> distinct() {
    return of(new LinkedHashSet<>(list()));
  }

  /** In order; equals stay as they were. {@code order} is null for their natural order. */
  public Seq<T> sorted(@Nullable Comparator<? super T> order) {
    List<T> sorted = list();
    sorted.sort(order);
    return of(sorted);
  }

  /** In their natural order. */
  public Seq<T> sorted() {
    return sorted(null);
  }

  /** Whether it is true of some element. */
  public boolean anyMatch(Predicate<? super T> condition) {
    for (T element : elements) {
      if (takes(element) && condition.test(element)) {
        return true;
      }
    }
    return false;
  }

  /** Whether it is true of no element. */
  public boolean noneMatch(Predicate<? super T> condition) {
    return !anyMatch(condition);
  }

  /** Whether it is true of every element. */
  public boolean allMatch(Predicate<? super T> condition) {
    for (T element : elements) {
      if (takes(element) && !condition.test(element)) {
        return false;
      }
    }
    return true;
  }

  /** The first element, which is not null. */
  public Optional<T> findFirst() {
    for (T element : elements) {
      if (takes(element)) {
        return Optional.of(element);
      }
    }
    return Optional.empty();
  }

  /** All elements put together, from the first on. */
  public Optional<T> reduce(BinaryOperator<T> together) {
    Iterator<T> all = list().iterator();
    if (!all.hasNext()) {
      return Optional.empty();
    }
    T reduced = all.next();
    while (all.hasNext()) {
      reduced = together.apply(reduced, all.next());
    }
    return Optional.of(reduced);
  }

  /** Does something with each element, in order. */
  public void forEach(Consumer<? super T> use) {
    for (T element : elements) {
      if (takes(element)) {
        use.accept(element);
      }
    }
  }

  /** How many there are. */
  public int count() {
    return taken == null ? elements.size() : list().size();
  }

  /** A list of their own, which cannot be changed. */
  public List<T> toList() {
    return Collections.unmodifiableList(list());
  }

  private List<T> list() {
    List<T> list = new ArrayList<>(elements.size());
    for (T element : elements) {
      if (takes(element)) {
        list.add(element);
      }
    }
    return list;
  }

  private boolean takes(T element) {
    return taken == null || taken.test(element);
  }
}
