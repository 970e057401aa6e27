package passband.compile;

import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import passband.model.Analyzer;
import passband.model.Analyzer.LoadBank;
import passband.model.Device.Outlet;
import passband.model.Instruments;
import passband.model.Termination;
import passband.plan.Figure;
import passband.plan.Setup;
import passband.plan.WiredLoads;

/**
 * The loads of a point.
 *
 * @param main the one that the output goes through; null when none is set
 * @param termination open or short in its place; null for neither
 * @param unit the instrument that it is set at; null when none is set
 * @param others further ones, by the role of the instrument
 */
record PointLoads(
    @Nullable Figure main,
    @Nullable Termination termination,
    @Nullable Analyzer unit,
    SortedMap<String, Figure> others) {

  /** Open is set only on a load that has such a position: else no load is wired. */
  private static PointLoads open(
      RowSpec spec,
      Termination end,
      Instruments instruments,
      @Nullable Outlet outlet,
      @Nullable Setup setup) {
    LoadBank bank = WiredLoads.bank(instruments, setup, spec.mode(), outlet, end);
    Analyzer unit = bank == null ? null : instruments.in(bank.from().owner());
    return new PointLoads(null, end, unit, spec.loads());
  }

  /** The main one as printed; null when there is none. */
  @Nullable String text() {
    return main != null ? main.text() : termination == null ? null : termination.word();
  }

  /** The main one as in identities. */
  String id() {
    return main != null ? main.id() : termination == null ? "-" : termination.word();
  }

  /** The role of the instrument that the main one is set at; null when none is set. */
  @Nullable String role() {
    return unit == null ? null : unit.role();
  }

  /**
   * What a row sets, in a setup on an outlet. Of several loads that the heading names by
   * instrument, the output goes through the one that is wired to it.
   */
  static PointLoads of(
      RowSpec spec, Instruments instruments, @Nullable Outlet outlet, @Nullable Setup setup) {
    if (spec.termination() != null) {
      return open(spec, spec.termination(), instruments, outlet, setup);
    }
    if (spec.load() != null) {
      LoadBank bank = WiredLoads.bank(instruments, setup, spec.mode(), outlet, spec.load().si());
      Analyzer unit =
          bank == null ? instruments.units().get(0) : instruments.in(bank.from().owner());
      return new PointLoads(spec.load(), null, unit, spec.loads());
    }
    if (spec.loads().isEmpty()) {
      return new PointLoads(null, null, null, spec.loads());
    }
    String main = spec.loads().firstKey();
    if (setup != null) {
      for (LoadBank bank : WiredLoads.of(instruments, setup, spec.mode(), outlet)) {
        main = spec.loads().containsKey(bank.from().owner()) ? bank.from().owner() : main;
      }
    }
    SortedMap<String, Figure> others = new TreeMap<>(spec.loads());
    Figure load = others.remove(main);
    return new PointLoads(load, null, instruments.in(main), others);
  }
}
