package passband.compile;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.model.Analyzer;
import passband.model.Analyzer.LoadBank;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.Instruments;
import passband.model.Termination;
import passband.plan.Act;
import passband.plan.Figure;
import passband.plan.Point;
import passband.plan.Setup;
import passband.plan.WiredLoads;
import passband.source.Span;

/** What further outlets deliver at the same time as a point's own. */
final class Simultaneous {
  private final Instruments instruments;
  private final Activations activations;
  private final Diagnostics diagnostics;

  /**
   * One of them.
   *
   * @param loads what it is delivered into
   * @param activate how it is activated
   * @param point the same as a point at which nothing is done or read
   */
  record Partner(
      RowSpec spec, Outlet outlet, PointLoads loads, Act.Activate activate, Point point) {}

  Simultaneous(Instruments instruments, Activations activations, Diagnostics diagnostics) {
    this.instruments = instruments;
    this.activations = activations;
    this.diagnostics = diagnostics;
  }

  /**
   * All of a row; one of which nothing says in which mode, or into what, is said and left out.
   *
   * @param place of what is delivered besides
   * @param times of the point
   */
  List<Partner> of(String id, RowSpec row, Points.Place place, PointLoads main, Point.Times times) {
    List<Partner> partners = new ArrayList<>();
    for (RowSpec also : row.also()) {
      Outlet outlet = also.driven();
      if (outlet == null) {
        continue;
      }
      if (also.mode() == null) {
        diagnostics.say(
            Code.BLANK_CELL,
            row.span(),
            "the row says something of '%s', but not in which mode it delivers at the same time",
            outlet.name().text());
        continue;
      }
      PointLoads loads = loads(also, row, outlet, place, main);
      if (loads != null) {
        partners.add(partner(id, also, outlet, place, loads, times));
      }
    }
    return List.copyOf(partners);
  }

  private Partner partner(
      String id,
      RowSpec also,
      Outlet outlet,
      Points.Place place,
      PointLoads loads,
      Point.Times times) {
    Mode mode = Objects.requireNonNull(also.mode(), "a partner has a mode");
    Point.Activation named = activations.named(also, outlet);
    Act.Activate activate =
        activations
            .by(also, outlet, named == null ? null : named.contact(), place.setup())
            .besides();
    Point.Settings settings =
        new Point.Settings(
            also.setting(),
            loads.main(),
            loads.role(),
            loads.termination(),
            named,
            null,
            Map.of(),
            Map.of(),
            Map.of(),
            List.of());
    Point point =
        new Point(
            id,
            outlet,
            mode,
            settings,
            List.of(),
            new Point.Times(times.from().in(mode.duty()), times.rest()),
            List.of(),
            List.of(),
            also.places(),
            also.span());
    return new Partner(also, outlet, loads, activate, point);
  }

  /** What it is delivered into; null, with the fault said, where nothing tells. */
  private @Nullable PointLoads loads(
      RowSpec also, RowSpec row, Outlet outlet, Points.Place place, PointLoads main) {
    boolean given = also.load() != null || also.termination() != null;
    List<LoadBank> wired =
        place.setup() == null
            ? List.of()
            : WiredLoads.of(instruments, place.setup(), also.mode(), outlet);
    if (!given) {
      return implied(row, outlet, place, main, wired);
    }
    if (also.load() != null && wired.isEmpty() && place.setup() != null) {
      sayNotWired(also.places().load(), outlet, also.load(), place.setup());
      return null;
    }
    if (also.load() != null && !has(wired, also.load())) {
      return new PointLoads(also.load(), null, null, new TreeMap<>()); // a check says it
    }
    PointLoads loads = PointLoads.of(also, instruments, outlet, place.setup());
    Analyzer unit = loads.unit();
    String other = unit == null ? null : otherwise(unit, row, main);
    String own = loads.text();
    if (own != null && other != null && !other.equals(own)) {
      diagnostics
          .say(
              Code.WRONG_KIND,
              also.places().load(),
              "one load takes what both outlets deliver: it cannot be %s and %s",
              other,
              own)
          .note(row.places().load(), "it is set here")
          .hint("leave '%s.load' out, or wire another load to it", outlet.name().text());
      return null;
    }
    return loads;
  }

  private static boolean has(List<LoadBank> wired, Figure load) {
    for (LoadBank bank : wired) {
      if (bank.values().contains(load.si())) {
        return true;
      }
    }
    return wired.isEmpty();
  }

  /** Of an instrument that the row sets anyway, as it sets it. */
  private @Nullable PointLoads implied(
      RowSpec row, Outlet outlet, Points.Place place, PointLoads main, List<LoadBank> wired) {
    if (outlet == place.outlet()) {
      return new PointLoads(main.main(), main.termination(), main.unit(), new TreeMap<>());
    }
    for (LoadBank bank : wired) {
      Analyzer unit = instruments.in(bank.from().owner());
      Figure load = main.others().get(unit.role());
      if (main.unit() != null && main.unit().role().equals(unit.role())) {
        return new PointLoads(main.main(), main.termination(), unit, new TreeMap<>());
      }
      if (load != null) {
        return new PointLoads(load, null, unit, new TreeMap<>());
      }
    }
    String name = outlet.name().text();
    DiagnosticBuilder said =
        diagnostics.say(
            Code.MISSING_COLUMN,
            row.span(),
            "nothing says into what '%s' delivers at the same time",
            name);
    if (place.setup() != null) {
      said.note(place.setup().name().span(), "the wiring is here");
    }
    said.hint("add a '%s.load' column; 'open' where nothing is wired to it", name);
    return null;
  }

  /** What the row sets an instrument's load to besides; null for nothing. */
  private static @Nullable String otherwise(Analyzer unit, RowSpec row, PointLoads main) {
    Figure other = main.others().get(unit.role());
    boolean own = main.unit() != null && main.unit().role().equals(unit.role());
    return own ? main.text() : other == null ? null : other.text();
  }

  private void sayNotWired(Span at, Outlet outlet, Figure load, Setup setup) {
    diagnostics
        .say(
            Code.LOAD_NOT_WIRED,
            at,
            "'%s' is to deliver into %s, but the setup wires no load to it",
            outlet.name().text(),
            load.text())
        .note(setup.name().span(), "the wiring is here")
        .hint("wire a load to it, or write 'open'");
  }

  /** The points of all. */
  static List<Point> points(List<Partner> partners) {
    List<Point> points = new ArrayList<>();
    partners.forEach(one -> points.add(one.point));
    return List.copyOf(points);
  }

  /** As the sheet prints it beside the other settings: {@code Monopolar 2, Crust, 40 W}. */
  static String printed(List<Partner> partners) {
    List<String> all = new ArrayList<>();
    for (Partner one : partners) {
      List<String> parts = new ArrayList<>(List.of(one.outlet.title()));
      if (one.spec.mode() != null) {
        parts.add(one.spec.mode().title());
      }
      if (one.spec.setting() != null) {
        parts.add(one.spec.setting().text());
      }
      all.add(String.join(", ", parts));
    }
    return String.join("; ", all);
  }

  /** The load as in identities; null where it is not given for this outlet. */
  static @Nullable String loadId(RowSpec also) {
    Termination end = also.termination();
    Figure load = also.load();
    return load != null ? load.id() : end == null ? null : end.word();
  }
}
