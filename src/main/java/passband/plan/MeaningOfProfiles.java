package passband.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import passband.model.ExtraSetting;
import passband.model.Join;
import passband.model.Series;
import passband.model.Terminal;
import passband.model.Termination;
import passband.plan.Fact.Area;
import passband.source.Span;
import passband.syntax.SettingOption;
import passband.syntax.Word;

/** What the profiles of generators and analyzers have in common. */
final class MeaningOfProfiles {
  private final FactList facts;
  private final Naming naming;
  private final Area area;
  private final Predicate<String> drawn;

  /**
   * @param area of everything that is not a step that stops the output
   * @param drawn tells the outlets and instruments whose terminals are printed in their order
   */
  MeaningOfProfiles(FactList facts, Naming naming, Area area, Predicate<String> drawn) {
    this.drawn = drawn;
    this.facts = facts;
    this.naming = naming;
    this.area = area;
  }

  /** Terminals, and their order where wiring drawings have them: as on the panel. */
  void terminals(String key, String of, List<Terminal> terminals, Span span) {
    boolean printed = false;
    List<String> ids = new ArrayList<>();
    for (Terminal terminal : terminals) {
      String id = naming.terminal(terminal);
      ids.add(id);
      printed |= drawn.test(terminal.owner());
      String holds = terminal.holds() == 1 ? null : "holds " + terminal.holds();
      facts.add(
          Fact.of(
              area,
              "terminal/" + id,
              id,
              Canonical.of(terminal.kind().word(), terminal.title(), terminal.holds()),
              FactText.titled(terminal.title(), terminal.kind().word(), holds),
              terminal.name().span()));
      floating(id, terminal);
      byHand(id, terminal);
    }
    if (printed) {
      facts.add(Fact.order(area, key, of + ", order of the terminals", ids, span));
    }
  }

  /**
   * The pole that a contact floats on: which leads may go to the contact depends on it. Whether a
   * jack is on earth: which leads may go to the jack does.
   */
  private void floating(String id, Terminal contact) {
    if (contact.onAnalyzer() && contact.floatsOn() != null) {
      facts.add(
          Fact.text(
              Area.CONTACT,
              "terminal/" + id + "/on-earth",
              id + ", connected",
              contact.isEarthed()
                  ? "to earth"
                  : contact.floatsOn().equals(Terminal.FLOATING)
                      ? "not to earth"
                      : contact.floatsOn(),
              contact.name().span()));
    } else if (contact.floatsOn() != null) {
      facts.add(
          Fact.text(
              Area.CONTACT,
              "terminal/" + id + "/floats-on",
              id + ", floats on",
              naming.pole(contact.floatsOn()),
              contact.name().span()));
    }
  }

  /** What leads have to join, in whatever order it is written. */
  void joins(String key, String subject, List<Join> joins) {
    for (Join join : joins) {
      List<String> ends = new ArrayList<>();
      join.both().forEach(end -> ends.add(naming.terminal(end)));
      ends.sort(null);
      String both = String.join(" and ", ends);
      facts.add(
          Fact.text(
              Area.CONTACT,
              key + "/join/" + String.join("+", ends),
              subject + ", joined",
              both,
              join.span()));
    }
  }

  /** A button that is pressed as it is: no lead has to close it. */
  private void byHand(String id, Terminal contact) {
    if (contact.byHand()) {
      facts.add(
          Fact.text(
              Area.CONTACT,
              "terminal/" + id + "/by-hand",
              id + ", closed",
              "by hand",
              contact.name().span()));
    }
  }

  /** Actions by name, in whatever order they are declared. */
  void actions(String of, Map<String, Word> actions) {
    actions.forEach(
        (name, text) ->
            facts.add(
                Fact.text(
                    name.equals("stop") ? Area.STOP : area,
                    "action/" + of + "/" + name,
                    of + " action " + name,
                    text.text(),
                    text.span())));
  }

  /** A setting; in which order its options are declared makes no difference. */
  void setting(String of, ExtraSetting setting) {
    String name = setting.name().text();
    List<String> options = setting.options() == null ? null : options(setting.options());
    String leave = setting.leave() == null ? null : setting.leave().text();
    String names = options == null ? null : String.join(", ", options);
    facts.add(
        Fact.of(
            area,
            "setting/" + of + "/" + name,
            of + " setting " + name,
            Canonical.of(setting.title(), options, series(setting.series()), leave),
            FactText.titled(
                setting.title(),
                names,
                FactText.series(setting.series()),
                leave == null ? null : "leave " + leave),
            setting.name().span()));
  }

  private static List<String> options(List<SettingOption> options) {
    List<String> texts = new ArrayList<>();
    for (SettingOption one : options) {
      Word title = one.title();
      texts.add(one.name().text() + (title == null ? "" : " \"" + title.text() + "\""));
    }
    texts.sort(null);
    return texts;
  }

  /** Loads in the one way. */
  static String loads(@Nullable Series series, List<Termination> terminations) {
    String values = series(series);
    return terminations.isEmpty()
        ? Canonical.of(values)
        : Canonical.of(values, sorted(terminations));
  }

  /** In which order they are declared makes no difference. */
  private static List<String> sorted(List<Termination> terminations) {
    List<String> words = new ArrayList<>(Termination.words(terminations));
    words.sort(null);
    return words;
  }

  /** A series in the one way; null for none. */
  static @Nullable String series(@Nullable Series series) {
    if (series == null) {
      return null;
    }
    List<String> segments = new ArrayList<>();
    for (Series.Segment s : SeriesForm.of(series.segments())) {
      segments.add(Canonical.of(s.from(), s.to(), s.step()));
    }
    return Canonical.of(series.dimension(), segments);
  }
}
