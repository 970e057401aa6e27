package passband.compile;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import passband.limit.NamedValues;
import passband.limit.RowValues;
import passband.limit.Stated;
import passband.limit.Value;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.ExtraSetting;
import passband.model.Termination;
import passband.plan.Figure;
import passband.plan.Point;
import passband.quantity.Dimension;
import passband.quantity.Rational;
import passband.quantity.Units;
import passband.resolve.Names;
import passband.source.Span;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * What one combination of a row's values asks for, on whatever outlet. Parts are null when the
 * table has no such column. It is immutable: each {@code with…} gives the same with one part more.
 *
 * @param loaded the loads that it sets
 * @param told what tells rows apart that set the same
 * @param extras other settings by column
 * @param values what limits use, by column
 * @param stated the manual's limits, as many as the row has columns of them filled in
 * @param places where its parts are written
 */
record RowSpec(
    @Nullable Mode mode,
    @Nullable Figure setting,
    Loaded loaded,
    Told told,
    @Nullable Figure target,
    SortedMap<String, Extra> extras,
    SortedMap<String, NamedFigure> values,
    List<Stated> stated,
    Point.Places places,
    Span span) {

  /**
   * Loads.
   *
   * @param load null when there is none
   * @param termination open or short in its place; null for neither
   * @param others of instruments that the heading names, by role
   */
  record Loaded(
      @Nullable Figure load, @Nullable Termination termination, SortedMap<String, Figure> others) {
    static final Loaded NONE = new Loaded(null, null, Collections.emptySortedMap());
  }

  /**
   * What tells rows apart that set the same.
   *
   * @param activation the contact that activates the mode; null when the table has no such column
   * @param repeat which of several equal readings it is; null when the table has no such column
   * @param driven the outlet that the columns name as the one that delivers; null where it is the
   *     one that is measured
   * @param also what further outlets deliver at the same time, each with its outlet as {@code
   *     driven}
   */
  record Told(
      Tree.@Nullable Ref activation,
      @Nullable Rational repeat,
      @Nullable Outlet driven,
      List<RowSpec> also) {
    static final Told NOTHING = new Told(null, null, null, List.of());
  }

  /** What further outlets deliver at the same time. */
  List<RowSpec> also() {
    return told.also;
  }

  /** What an outlet delivers at the same time; one that asks for nothing where it is not said. */
  RowSpec also(Outlet outlet) {
    for (RowSpec one : told.also) {
      if (one.driven() == outlet) {
        return one;
      }
    }
    return empty(span).withDriven(outlet);
  }

  /** The same with this in the place of what the same outlet delivers. */
  RowSpec withAlso(RowSpec other) {
    List<RowSpec> more = new ArrayList<>(told.also);
    more.removeIf(one -> one.driven() == other.driven());
    more.add(other);
    return withTold(new Told(told.activation, told.repeat, told.driven, List.copyOf(more)));
  }

  /** The outlet that delivers, where it is another than the one that is measured; else null. */
  @Nullable Outlet driven() {
    return told.driven;
  }

  /** The contact that activates the mode; null when the table has no such column. */
  Tree.@Nullable Ref activation() {
    return told.activation;
  }

  /** Which of several equal readings it is; null when the table has no such column. */
  @Nullable Rational repeat() {
    return told.repeat;
  }

  /** The load; null when there is none. */
  @Nullable Figure load() {
    return loaded.load;
  }

  /** Open or short in the place of a load; null for neither. */
  @Nullable Termination termination() {
    return loaded.termination;
  }

  /** The loads of instruments that the heading names, by role. */
  SortedMap<String, Figure> loads() {
    return loaded.others;
  }

  /**
   * A value of another setting.
   *
   * @param column as in the heading
   * @param text as printed
   * @param id as in identities
   * @param value null when it is a name
   */
  record Extra(OwnSetting of, String column, String text, String id, @Nullable Value value) {
    /** The setting. */
    ExtraSetting setting() {
      return of.setting();
    }
  }

  /** One that asks for nothing. */
  static RowSpec empty(Span span) {
    return new RowSpec(
        null,
        null,
        Loaded.NONE,
        Told.NOTHING,
        null,
        Collections.emptySortedMap(),
        Collections.emptySortedMap(),
        List.of(),
        new Point.Places(span, span, span),
        span);
  }

  RowSpec withMode(Mode other, Span where) {
    Point.Places at = new Point.Places(where, places.setting(), places.load());
    return new RowSpec(other, setting, loaded, told, target, extras, values, stated, at, span);
  }

  RowSpec withSetting(Figure other, Span where) {
    Point.Places at = new Point.Places(places.mode(), where, places.load());
    return new RowSpec(mode, other, loaded, told, target, extras, values, stated, at, span);
  }

  RowSpec withLoad(Figure other, Span where) {
    Point.Places at = new Point.Places(places.mode(), places.setting(), where);
    return withLoaded(new Loaded(other, null, loaded.others), at);
  }

  RowSpec withTermination(Termination other, Span where) {
    Point.Places at = new Point.Places(places.mode(), places.setting(), where);
    return withLoaded(new Loaded(null, other, loaded.others), at);
  }

  RowSpec withLoadOf(String role, Figure other, Span where) {
    SortedMap<String, Figure> more = new TreeMap<>(loaded.others);
    more.put(role, other);
    Point.Places at = new Point.Places(places.mode(), places.setting(), where);
    SortedMap<String, Figure> all = Collections.unmodifiableSortedMap(more);
    return withLoaded(new Loaded(loaded.load, loaded.termination, all), at);
  }

  private RowSpec withLoaded(Loaded other, Point.Places at) {
    return new RowSpec(mode, setting, other, told, target, extras, values, stated, at, span);
  }

  RowSpec withActivation(Tree.Ref contact) {
    return withTold(new Told(contact, told.repeat, told.driven, told.also));
  }

  RowSpec withRepeat(Rational which) {
    return withTold(new Told(told.activation, which, told.driven, told.also));
  }

  RowSpec withDriven(Outlet outlet) {
    return withTold(new Told(told.activation, told.repeat, outlet, told.also));
  }

  private RowSpec withTold(Told other) {
    return new RowSpec(mode, setting, loaded, other, target, extras, values, stated, places, span);
  }

  RowSpec withValue(Word name, Figure figure) {
    SortedMap<String, NamedFigure> more = new TreeMap<>(values);
    more.put(name.text(), new NamedFigure(name, figure));
    SortedMap<String, NamedFigure> all = Collections.unmodifiableSortedMap(more);
    return new RowSpec(mode, setting, loaded, told, target, extras, all, stated, places, span);
  }

  /** A value and the column that names it. */
  record NamedFigure(Word name, Figure figure) {}

  RowSpec withTarget(Figure other) {
    return new RowSpec(mode, setting, loaded, told, other, extras, values, stated, places, span);
  }

  RowSpec withExtra(Extra extra) {
    SortedMap<String, Extra> more = new TreeMap<>(extras);
    more.put(extra.column(), extra);
    SortedMap<String, Extra> all = Collections.unmodifiableSortedMap(more);
    return new RowSpec(mode, setting, loaded, told, target, all, values, stated, places, span);
  }

  RowSpec withStated(Stated other) {
    List<Stated> more = new ArrayList<>(stated);
    more.add(other);
    return new RowSpec(
        mode, setting, loaded, told, target, extras, values, List.copyOf(more), places, span);
  }

  /** The load, open or short as printed; null when the row says nothing of it. */
  @Nullable String loadText() {
    Figure load = loaded.load;
    Termination end = loaded.termination;
    return load != null ? load.text() : end == null ? null : end.word();
  }

  /** The same to take dimensions from: with some load in the place of open or short. */
  RowSpec sample() {
    Figure ohm = new Figure(Rational.ONE, Units.of("ohm"));
    return loaded.termination == null ? this : withLoad(ohm, places.load());
  }

  /** What the names in an expression stand for on the row: its columns that hold numbers. */
  RowValues values(Names names) {
    NamedValues values = new NamedValues(names, span);
    put(values, "setting", setting);
    put(values, "load", loaded.load);
    if (loaded.termination != null) {
      values.none("load", "the load is " + loaded.termination.word());
    }
    put(values, "target", target);
    for (NamedFigure one : this.values.values()) {
      Dimension dimension = one.figure.unit().dimension();
      values.put(one.name, Value.of(one.figure.si(), dimension));
    }
    for (Extra extra : extras.values()) {
      if (extra.value != null) {
        values.put(extra.setting().name(), extra.value);
      }
    }
    return values;
  }

  private static void put(NamedValues values, String name, @Nullable Figure figure) {
    if (figure != null) {
      values.put(name, Value.of(figure.si(), figure.unit().dimension()));
    }
  }
}
