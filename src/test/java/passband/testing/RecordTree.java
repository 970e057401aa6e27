package passband.testing;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;
import java.util.function.Supplier;

/** RecordTree taken apart and put together again, whatever they are made of. */
public final class RecordTree {
  private RecordTree() {}

  /**
   * One component of one record of a whole.
   *
   * @param owner the component that the record is found in, {@code Point.setting}; null for the
   *     whole
   */
  public record Spot(String owner, Record record, RecordComponent component) {
    /** {@code Figure.unit}. */
    public String name() {
      return RecordTree.name(component);
    }

    /** What it is now. */
    public Object value() {
      return get(record, component);
    }
  }

  /** {@code Figure.unit}: the record's simple name and the component's. */
  public static String name(RecordComponent component) {
    return component.getDeclaringRecord().getSimpleName() + "." + component.getName();
  }

  /** Of each class once: Java makes them anew whenever it is asked. */
  private static final Map<Class<?>, RecordComponent[]> COMPONENTS = new ConcurrentHashMap<>();

  private static RecordComponent[] components(Class<?> type) {
    return COMPONENTS.computeIfAbsent(
        type,
        t -> {
          RecordComponent[] components = t.getRecordComponents();
          for (RecordComponent component : components) {
            component.getAccessor().setAccessible(true);
          }
          return components;
        });
  }

  private static Object get(Record record, RecordComponent component) {
    try {
      return component.getAccessor().invoke(record);
    } catch (ReflectiveOperationException e) {
      throw new AssertionError(e);
    }
  }

  /** Every component of every record of a whole, each record once; leaves are not gone into. */
  public static List<Spot> spots(Record whole, Predicate<Spot> entered) {
    List<Spot> spots = new ArrayList<>();
    collect(null, whole, entered, new IdentityHashMap<>(), spots);
    return spots;
  }

  private static void collect(
      String owner,
      Object value,
      Predicate<Spot> entered,
      Map<Object, Boolean> seen,
      List<Spot> spots) {
    if (value instanceof Iterable<?> list) {
      list.forEach(element -> collect(owner, element, entered, seen, spots));
    } else if (value instanceof Record record && seen.put(record, true) == null) {
      for (RecordComponent component : components(record.getClass())) {
        Spot spot = new Spot(owner, record, component);
        spots.add(spot);
        if (entered.test(spot)) {
          collect(spot.name(), spot.value(), entered, seen, spots);
        }
      }
    }
  }

  /**
   * The whole with one component of one record another, wherever that record is in it.
   *
   * @param entered the components in which the record may be; the others stay as they are
   * @param fresh what the components of these names are whenever a record is made anew
   */
  public static <T extends Record> T with(
      T whole,
      Spot spot,
      Object value,
      Predicate<RecordComponent> entered,
      Map<String, Supplier<?>> fresh) {
    Rewriter rewriter = new Rewriter(spot, value, entered, fresh);
    @SuppressWarnings("unchecked")
    T rewritten = (T) rewriter.rewrite(whole);
    return rewritten;
  }

  private static final class Rewriter {
    private final Spot spot;
    private final Object value;
    private final Predicate<RecordComponent> entered;
    private final Map<String, Supplier<?>> fresh;
    private final Map<Object, Object> made = new IdentityHashMap<>();

    Rewriter(
        Spot spot,
        Object value,
        Predicate<RecordComponent> entered,
        Map<String, Supplier<?>> fresh) {
      this.spot = spot;
      this.value = value;
      this.entered = entered;
      this.fresh = fresh;
    }

    Object rewrite(Object old) {
      if (!(old instanceof Record || old instanceof List || old instanceof Map)) {
        return old;
      }
      Object known = made.get(old);
      if (known == null) {
        known = old instanceof Record record ? record(record) : collection(old);
        made.put(old, known);
      }
      return known;
    }

    private Object collection(Object old) {
      boolean changed = false;
      if (old instanceof List<?> list) {
        List<Object> copy = new ArrayList<>();
        for (Object element : list) {
          copy.add(rewrite(element));
          changed |= copy.get(copy.size() - 1) != element;
        }
        return changed ? copy : old;
      }
      Map<Object, Object> copy = new LinkedHashMap<>();
      for (Map.Entry<?, ?> entry : ((Map<?, ?>) old).entrySet()) {
        copy.put(entry.getKey(), rewrite(entry.getValue()));
        changed |= copy.get(entry.getKey()) != entry.getValue();
      }
      return changed ? copy : old;
    }

    private Object record(Record old) {
      RecordComponent[] components = components(old.getClass());
      Object[] values = new Object[components.length];
      boolean changed = false;
      for (int i = 0; i < components.length; i++) {
        Object before = get(old, components[i]);
        boolean here = old == spot.record() && components[i].getName().equals(spotName());
        values[i] = here ? value : entered.test(components[i]) ? rewrite(before) : before;
        changed |= here || values[i] != before;
      }
      return changed ? renewed(old, components, values) : old;
    }

    private String spotName() {
      return spot.component().getName();
    }

    private Object renewed(Record old, RecordComponent[] components, Object[] values) {
      for (int i = 0; i < components.length; i++) {
        if (fresh.containsKey(name(components[i]))) {
          values[i] = fresh.get(name(components[i])).get();
        }
      }
      return make(old.getClass(), values);
    }
  }

  private static Object make(Class<?> type, Object[] values) {
    try {
      Class<?>[] types = new Class<?>[values.length];
      RecordComponent[] components = components(type);
      for (int i = 0; i < types.length; i++) {
        types[i] = components[i].getType();
      }
      var constructor = type.getDeclaredConstructor(types);
      constructor.setAccessible(true);
      return constructor.newInstance(values);
    } catch (ReflectiveOperationException e) {
      throw new AssertionError(type + ": " + e.getCause(), e);
    }
  }

  /**
   * Every component that a record of this type can have in it, by the declarations alone; leaves
   * are not gone into.
   */
  public static Map<String, RecordComponent> components(
      Class<?> type, Set<Class<?>> leaves, Predicate<RecordComponent> entered) {
    Map<String, RecordComponent> found = new LinkedHashMap<>();
    components(type, entered, new HashSet<>(leaves), found);
    return found;
  }

  private static void components(
      Type type,
      Predicate<RecordComponent> entered,
      Set<Type> seen,
      Map<String, RecordComponent> found) {
    if (!seen.add(type)) {
      return;
    }
    if (type instanceof ParameterizedType generic) {
      for (Type argument : generic.getActualTypeArguments()) {
        components(argument, entered, seen, found);
      }
    } else if (type instanceof Class<?> c && c.isSealed()) {
      for (Class<?> permitted : c.getPermittedSubclasses()) {
        components(permitted, entered, seen, found);
      }
    } else if (type instanceof Class<?> c && c.isRecord()) {
      for (RecordComponent component : c.getRecordComponents()) {
        found.put(name(component), component);
        if (entered.test(component)) {
          components(component.getGenericType(), entered, seen, found);
        }
      }
    }
  }
}
