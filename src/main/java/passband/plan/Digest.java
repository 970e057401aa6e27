package passband.plan;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import passband.limit.Limit;
import passband.model.Accuracy;
import passband.model.Analyzer;
import passband.model.Device;
import passband.model.ExtraSetting;
import passband.model.Lead;
import passband.model.Series;
import passband.model.Terminal;
import passband.sequence.Seq;
import passband.source.Sha256;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * The digest of a compiled procedure: SHA-256 over everything that it means, written out in one
 * fixed way. Comments, layout, the spelling of numbers and units and the split into files are no
 * part of the meaning; every step, caution, connection, limit and figure of the profiles is.
 */
final class Digest {
  private final StringBuilder out = new StringBuilder(1 << 14);

  private Digest() {}

  /** In lower-case hexadecimal. */
  static String of(Plan plan) {
    return Sha256.hex(meaning(plan).getBytes(StandardCharsets.UTF_8));
  }

  /**
   * The meaning written out: a line a fact, its parts set apart so that no two facts can run into
   * one.
   */
  static String meaning(Plan plan) {
    Digest digest = new Digest();
    digest.line("passband-meaning", 1);
    digest.head(plan);
    digest.device(plan.device());
    digest.analyzer(plan.analyzer());
    plan.leads().forEach(digest::lead);
    plan.stages().forEach(stage -> stage.accept(digest.new Stages()));
    return digest.out.toString();
  }

  private void line(Object... parts) {
    for (Object part : parts) {
      String text = part == null ? "~" : part.toString();
      out.append(text.length()).append(':').append(text).append(' ');
    }
    out.append('\n');
  }

  private void head(Plan plan) {
    line("procedure", plan.name().text(), plan.title());
    Plan.Revision r = plan.revision();
    line("revision", r.label(), r.date(), r.replaces(), r.replacesDate(), r.replacesDigest());
    line(
        "decision",
        plan.decision().kind().word(),
        plan.decision().risk(),
        plan.decision().coverage());
    plan.cautions().forEach(c -> line("caution", c.name().text(), c.text()));
    plan.allowed().forEach(a -> line("allow", a.place(), a.code(), a.reason()));
  }

  // ---- profiles ----

  private void device(Device device) {
    line("device", device.name().text(), device.title());
    for (Device.Outlet outlet : device.outlets()) {
      line("outlet", outlet.name().text(), outlet.title(), outlet.renamedFrom());
      outlet.terminals().forEach(this::terminal);
    }
    device.modes().forEach(this::mode);
    actions(device.actions());
    device.states().forEach(s -> line("state", s.name().text(), s.title(), s.enter(), s.leave()));
    device.settings().forEach(this::setting);
  }

  private void terminal(Terminal t) {
    line("terminal", t.kind().word(), t.name().text(), t.title(), t.holds());
  }

  private void mode(Device.Mode mode) {
    line("mode", mode.name().text(), mode.title(), mode.renamedFrom());
    mode.outlets().forEach(o -> line("on", o.name().text()));
    line("through", mode.through() == null ? null : mode.through().name().text());
    line(
        "setting",
        mode.settingKind() == null ? null : mode.settingKind().name(),
        series(mode.setting()));
    line("load", series(mode.loads()));
    quantityLimit("output", mode.output());
    mode.limits().forEach(l -> quantityLimit("limit", l));
    line("duty", mode.duty() == null ? null : mode.duty().on() + "/" + mode.duty().off());
    mode.activateBy()
        .forEach(
            a -> line("activate", String.join(".", Seq.of(a.parts()).map(Word::text).toList())));
  }

  private void quantityLimit(String what, Tree.QuantityLimit limit) {
    line(
        what,
        limit == null ? null : limit.quantity().text() + " " + LimitText.exact(limit.limit()));
  }

  private void actions(Map<String, Word> actions) {
    Seq.of(actions.entrySet())
        .sorted((one, other) -> one.getKey().compareTo(other.getKey()))
        .forEach(e -> line("action", e.getKey(), e.getValue().text()));
  }

  private void setting(ExtraSetting s) {
    List<String> options =
        s.options() == null ? null : Seq.of(s.options()).map(Word::text).toList();
    line("extra", s.name().text(), s.title(), options, series(s.series()));
  }

  private static String series(Series series) {
    if (series == null) {
      return null;
    }
    StringBuilder text = new StringBuilder();
    for (Series.Segment s : series.segments()) {
      text.append(' ').append(s.from()).append("..").append(s.to()).append('+').append(s.step());
    }
    return text.toString();
  }

  private void analyzer(Analyzer analyzer) {
    line("analyzer", analyzer.name().text(), analyzer.title(), analyzer.settle());
    analyzer.terminals().forEach(this::terminal);
    for (Analyzer.LoadBank load : analyzer.loads()) {
      line(
          "bank",
          load.name(),
          load.from().id(),
          load.to().id(),
          series(load.values()),
          accuracy(load.error()));
      load.power().forEach(p -> line("power", p.power(), p.time()));
    }
    for (Analyzer.Measure measure : analyzer.measures()) {
      line(
          "measure",
          measure.quantity().name(),
          measure.from() == null ? null : measure.from().id(),
          measure.to() == null ? null : measure.to().id());
      for (Analyzer.Range r : measure.ranges()) {
        line("range", r.from(), r.to(), r.resolution(), r.unit().symbol(), accuracy(r.error()));
      }
    }
    actions(analyzer.actions());
    analyzer.settings().forEach(this::setting);
  }

  private static String accuracy(Accuracy accuracy) {
    return accuracy.relative() + "+" + accuracy.absolute();
  }

  private void lead(Lead lead) {
    line(
        lead.link() ? "link" : "lead",
        lead.name().text(),
        lead.title(),
        lead.rated(),
        lead.colour());
  }

  // ---- stages ----

  private final class Stages implements Stage.Visitor<Void> {
    @Override
    public Void section(Stage.Section section) {
      line("section", section.name().text(), section.title());
      section.steps().forEach(Digest.this::step);
      return null;
    }

    @Override
    public Void run(Stage.Run run) {
      line(
          "run",
          run.test().text(),
          run.title(),
          run.renamedFrom(),
          run.phase(),
          run.outlet() == null ? null : run.outlet().name().text());
      line("state", run.state() == null ? null : run.state().name().text());
      if (run.setup() != null) {
        line("setup", run.setup().name().text(), run.setup().title());
        run.setup()
            .wires()
            .forEach(w -> line("wire", w.lead().name().text(), w.from().id(), w.to().id()));
      }
      run.moves()
          .forEach(m -> line("move", m.kind(), m.lead().name().text(), m.from().id(), m.to().id()));
      run.derives().forEach(d -> line("derive", d.name(), d.title(), d.formula()));
      if (run.sweep() != null) {
        Stage.Swept s = run.sweep();
        line(
            "sweep",
            s.what(),
            s.up(),
            s.from().si(),
            s.to().si(),
            s.step().si(),
            s.until(),
            s.as());
      }
      line("before");
      run.before().forEach(Digest.this::step);
      run.points().forEach(Digest.this::point);
      line("after");
      run.after().forEach(Digest.this::step);
      return null;
    }

    @Override
    public Void adjust(Stage.Adjust adjust) {
      line("adjust", adjust.name().text(), adjust.title(), adjust.affects());
      adjust.steps().forEach(Digest.this::step);
      return null;
    }

    @Override
    public Void clear(Stage.Clear clear) {
      line("clear");
      return null;
    }
  }

  private void step(PlanStep s) {
    line(
        "step", s.kind().word(), s.name(), s.text(), s.unit(), s.outcomes(), s.pass(), s.seconds());
  }

  private void point(Point point) {
    line(
        "point",
        point.id(),
        point.target() == null ? null : point.target().si(),
        point.onTime(),
        point.rest());
    point.steps().forEach(this::step);
    point.readings().forEach(r -> line("reading", r.id(), r.unit().symbol(), r.resolution()));
    point.limits().forEach(this::limit);
  }

  private void limit(Limit limit) {
    line(
        "limit",
        limit.id(),
        limit.title(),
        limit.unit().symbol(),
        limit.resolution(),
        limit.source().word());
    line(
        "is",
        LimitText.exact(limit.rule().limit()),
        limit.rule().readAs() == null ? null : limit.rule().readAs().text());
    line(
        "printed",
        limit.printed().lower(),
        limit.printed().upper(),
        limit.accept().lower(),
        limit.accept().upper());
  }
}
