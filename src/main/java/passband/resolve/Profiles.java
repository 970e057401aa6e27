package passband.resolve;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Analyzer;
import passband.model.Device;
import passband.model.ExtraSetting;
import passband.model.Lead;
import passband.model.Series;
import passband.model.Terminal;
import passband.quantity.Dimension;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.syntax.Amount;
import passband.syntax.SettingOption;
import passband.syntax.Tree;
import passband.syntax.Word;

/** Devices, analyzers and leads as values, each declaration taken once. */
public final class Profiles {
  /** The steps of a test that do something else than stop. */
  private static final List<String> STEPS =
      List.of("select", "adjust", "set-load", "start", "activate", "hold", "read");

  private final Names names;
  private final Diagnostics diagnostics;
  private final Values values;
  private final Map<Tree.Declaration, Object> made = new IdentityHashMap<>();

  /** What names stand for is recorded; faults go to the diagnostics. */
  public Profiles(Names names, Diagnostics diagnostics) {
    this.names = names;
    this.diagnostics = diagnostics;
    this.values = new Values(diagnostics);
  }

  /** The device of a declaration. */
  public Device device(Tree.Device tree) {
    return (Device)
        made.computeIfAbsent(tree, t -> new DeviceProfile(names, diagnostics, values).device(tree));
  }

  /** The analyzer of a declaration. */
  public Analyzer analyzer(Tree.Analyzer tree) {
    return (Analyzer)
        made.computeIfAbsent(
            tree, t -> new AnalyzerProfile(names, diagnostics, values).analyzer(tree));
  }

  /** The leads of a declaration, in the order written. */
  @SuppressWarnings("unchecked")
  public List<Lead> leads(Tree.Leads tree) {
    return (List<Lead>) made.computeIfAbsent(tree, t -> makeLeads(tree));
  }

  private List<Lead> makeLeads(Tree.Leads tree) {
    Scope.distinct(diagnostics, "lead", tree.leads(), Tree.Lead::name);
    titles(diagnostics, "leads", tree.leads(), Tree.Lead::name, l -> titleOf(l.title(), l.name()));
    List<Lead> leads = new ArrayList<>();
    for (Tree.Lead lead : tree.leads()) {
      RequiredRatings.checkReason(lead.unknown(), diagnostics);
      leads.add(
          new Lead(
              lead.kind(),
              lead.name(),
              titleOf(lead.title(), lead.name()),
              lead.rated() == null
                  ? null
                  : new Plausible(diagnostics)
                      .lead(
                          lead.rated(),
                          values.positive(lead.rated(), Dimension.VOLTAGE, "a rating")),
              lead.rated() == null ? null : lead.rated().span().text(),
              lead.unknown(),
              lead.colour() == null ? null : lead.colour().text()));
    }
    return List.copyOf(leads);
  }

  static String titleOf(@Nullable Word title, Word name) {
    return title == null ? name.text() : title.text();
  }

  /** What the sheet prints says something. */
  public static void requireText(Word text, Diagnostics diagnostics) {
    if (text.text().isBlank()) {
      diagnostics.say(Code.MISSING_ITEM, text.span(), "this text is blank");
    }
  }

  static Map<String, Word> actions(List<Tree.Action> actions, Diagnostics diagnostics) {
    Scope.distinct(diagnostics, "action", actions, Tree.Action::name);
    Map<String, Word> texts = new LinkedHashMap<>();
    for (Tree.Action action : actions) {
      texts.putIfAbsent(action.name().text(), action.text());
      requireText(action.text(), diagnostics);
      if (action.as() != null && !stops(action)) {
        Scope.unknown(diagnostics, action.as(), "kind of action", List.of("stop"));
      }
    }
    return texts;
  }

  /**
   * Records the settings that actions name: in a text, or by the action's own name, which makes it
   * the way to set the setting.
   */
  static void nameSettings(
      List<Tree.Action> actions, List<Tree.ExtraSetting> settings, Names names) {
    for (Tree.ExtraSetting setting : settings) {
      nameLeft(setting, names);
      String name = setting.name().text();
      for (Tree.Action action : actions) {
        if (action.name().text().equals(name)) {
          names.use(action.name(), setting.name());
        }
        for (Placeholder one : Placeholder.in(action.text())) {
          if (one.name().text().equals(name)) {
            names.use(one.name(), setting.name());
          }
        }
      }
    }
  }

  private static void nameLeft(Tree.ExtraSetting setting, Names names) {
    for (SettingOption option : options(setting)) {
      if (setting.leave() != null && option.name().text().equals(setting.leave().text())) {
        names.use(setting.leave(), option.name());
      }
    }
  }

  static List<ExtraSetting> settings(
      List<Tree.ExtraSetting> trees, Diagnostics diagnostics, Values values) {
    Scope.distinct(diagnostics, "setting", trees, Tree.ExtraSetting::name);
    List<ExtraSetting> settings = new ArrayList<>();
    for (Tree.ExtraSetting tree : trees) {
      if (List.of("mode", "setting", "load", "stated", "target", "outlet")
          .contains(tree.name().text())) {
        diagnostics.say(
            Code.DUPLICATE_NAME,
            tree.name().span(),
            "'%s' is a built-in column and cannot be the name of a setting",
            tree.name().text());
      }
      if (tree.options() != null) {
        Scope.distinct(diagnostics, "option", tree.options(), SettingOption::name);
        distinctTitles(tree.options(), diagnostics);
      }
      Series series = tree.series() == null ? null : series(tree.series(), values);
      settings.add(
          new ExtraSetting(
              tree.name(),
              titleOf(tree.title(), tree.name()),
              tree.options(),
              series,
              leave(tree, series, diagnostics),
              tree));
    }
    return settings;
  }

  private static List<SettingOption> options(Tree.ExtraSetting setting) {
    return setting.options() == null ? List.of() : setting.options();
  }

  /** What is printed tells the options of a setting apart. */
  private static void distinctTitles(List<SettingOption> options, Diagnostics diagnostics) {
    for (int i = 0; i < options.size(); i++) {
      for (int j = 0; j < i; j++) {
        SettingOption one = options.get(j);
        SettingOption other = options.get(i);
        if (one.printed().text().equals(other.printed().text())
            && !one.name().text().equals(other.name().text())) {
          diagnostics
              .say(
                  Code.PRINTED_NAME_REPEATED,
                  other.printed().span(),
                  "two options of one setting have the printed name \"%s\"",
                  other.printed().text())
              .note(one.printed().span(), "the other is here");
        }
      }
    }
  }

  /** Whether an action is declared to stop the output. */
  public static boolean stops(Tree.Action action) {
    return action.as() != null && action.as().text().equals("stop");
  }

  /** What a setting is left at, as printed: one of its options or of its values. */
  private static @Nullable Word leave(
      Tree.ExtraSetting tree, @Nullable Series series, Diagnostics diagnostics) {
    return tree.leaveAmount() == null
        ? leaveOption(tree, diagnostics)
        : leaveAmount(tree, tree.leaveAmount(), series, diagnostics);
  }

  private static @Nullable Word leaveOption(Tree.ExtraSetting tree, Diagnostics diagnostics) {
    Word leave = tree.leave();
    if (leave == null) {
      return null;
    }
    if (tree.options() == null) {
      diagnostics.say(
          Code.WRONG_KIND,
          leave.span(),
          "'%s' is a quantity, so it is left at one of its values",
          tree.name().text());
      return null;
    }
    List<String> names = new ArrayList<>();
    for (SettingOption option : options(tree)) {
      if (option.name().text().equals(leave.text())) {
        return new Word(option.printed().text(), leave.span());
      }
      names.add(option.name().text());
    }
    Scope.unknown(diagnostics, leave, "option", names);
    return null;
  }

  private static @Nullable Word leaveAmount(
      Tree.ExtraSetting tree, Amount leave, @Nullable Series series, Diagnostics diagnostics) {
    if (tree.options() != null) {
      diagnostics.say(
          Code.WRONG_KIND,
          leave.span(),
          "'%s' is set to a name, so it is left at one of its options",
          tree.name().text());
      return null;
    }
    Rational si =
        series == null
            ? null
            : new Values(diagnostics).si(leave, series.dimension(), "'" + tree.name().text() + "'");
    if (series == null || si == null) {
      return null; // the fault is said
    }
    if (!series.contains(si)) {
      diagnostics.say(
          Code.SETTING_OFF_SPAN, leave.span(), "'%s' cannot be set to this", tree.name().text());
      return null;
    }
    return new Word(series.text(si), leave.span());
  }

  /**
   * Says each action that sets something and does not say what to: the text for a mode names the
   * mode, and so on.
   *
   * @param required the placeholder that an action of this name must have
   */
  static void requirePlaceholders(
      List<Tree.Action> actions,
      List<Tree.ExtraSetting> settings,
      Map<String, String> required,
      Diagnostics diagnostics) {
    Map<String, String> all = new LinkedHashMap<>(required);
    settings.forEach(setting -> all.put(setting.name().text(), setting.name().text()));
    for (Tree.Action action : actions) {
      String wanted = all.get(action.name().text());
      Word as = action.as();
      if (as != null && stops(action) && (wanted != null || STEPS.contains(action.name().text()))) {
        diagnostics
            .say(
                Code.WRONG_KIND,
                as.span(),
                "'%s' is a step of its own, so it cannot be what stops the output",
                action.name().text())
            .hint("declare what stops the output as an action of another name");
      }
      if (wanted != null && !Placeholder.stands(action.text(), wanted)) {
        diagnostics
            .say(
                Code.PLACEHOLDER_MISSING,
                action.text().span(),
                "the action '%s' does not say what to set: its text has no {%s}",
                action.name().text(),
                wanted)
            .hint("put {%s} where the value stands in the text", wanted);
      }
    }
  }

  private static @Nullable Series series(List<Tree.SeriesItem> items, Values values) {
    Unit unit = values.unitOf(items.get(0).from());
    return unit == null ? null : values.series(items, unit.dimension(), "this setting");
  }

  static int holds(@Nullable Amount written, Values values) {
    Integer count =
        written == null ? null : values.count(written, "the number of leads that a terminal holds");
    return count == null ? 1 : count;
  }

  /** Says each printed name that two terminals share. */
  static void printedNames(Diagnostics diagnostics, String what, List<Terminal> terminals) {
    titles(diagnostics, what, terminals, Terminal::name, Terminal::title);
  }

  /** Says each printed name that two things share: a technician could not tell them apart. */
  static <T> void titles(
      Diagnostics diagnostics,
      String what,
      List<T> things,
      Function<T, Word> name,
      Function<T, String> title) {
    for (int i = 0; i < things.size(); i++) {
      for (int j = 0; j < i; j++) {
        String printed = title.apply(things.get(i));
        if (printed.equals(title.apply(things.get(j)))) {
          diagnostics
              .say(
                  Code.PRINTED_NAME_REPEATED,
                  name.apply(things.get(i)).span(),
                  "two %s have the printed name \"%s\"",
                  what,
                  printed)
              .note(name.apply(things.get(j)).span(), "the other is here");
        }
      }
    }
  }
}
