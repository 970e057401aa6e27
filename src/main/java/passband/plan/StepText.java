package passband.plan;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.model.Lead;
import passband.model.Terminal;
import passband.words.Language;

/**
 * A step in the words of the sheet: the author's, or sentences made of the operands where the
 * author gives none. The sentences of the program's own are in the language's words; no digest
 * knows them.
 */
public final class StepText implements Act.Visitor<String> {
  private final Language language;
  private final boolean onTheLine;
  private final @Nullable Words words;

  /** What a hand lets go of; null where it lets go of a key, or of nothing. */
  private Act.@Nullable Pressed held;

  private StepText(Language language, boolean onTheLine, @Nullable Words words) {
    this.language = language;
    this.onTheLine = onTheLine;
    this.words = words;
  }

  /** The step as it is done at its point. */
  public static String of(PlanStep step, Language language) {
    return step.act().accept(new StepText(language, false, step.words()));
  }

  /** The step as it is done at each of several lines, which hold the values that differ. */
  public static String forEachLine(PlanStep step, Language language) {
    return step.act().accept(new StepText(language, true, step.words()));
  }

  /** What a placeholder stands for. */
  private String said(Words.Filled filled) {
    if (onTheLine) {
      switch (filled.slot()) {
        case SETTING:
          return language.of("line.setting");
        case LOAD:
          return language.of("line.load");
        case EXTRA:
          return language.of("line.extra", filled.name().replace('-', ' '));
        default:
          break;
      }
    }
    return switch (filled.slot()) {
      case HELD -> held == null ? language.of("button", filled.text()) : button(held);
      case RECORD -> language.of("recorded", filled.text());
      case EXTRA -> language.number(filled.text()); // an option's words are the author's
      case SETTING, LOAD, PARTNER -> language.term(language.number(filled.text()));
      default -> filled.text();
    };
  }

  private String value(Slot slot, String name, String text) {
    return said(new Words.Filled(slot, name, text));
  }

  private String orElse(String key, Object... values) {
    return words == null ? language.of(key, values) : authors();
  }

  private String authors() {
    return words == null ? "" : words.text(this::said);
  }

  /** With whose it is before it, where there are several. */
  private String of(Owner owner, String sentence) {
    String label = owner.label();
    return label == null || sentence.isEmpty() ? sentence : language.of("step.of", label, sentence);
  }

  @Override
  public String select(Act.Select select) {
    return orElse("step.select", select.mode().title());
  }

  @Override
  public String adjust(Act.Adjust adjust) {
    return orElse("step.adjust", value(Slot.SETTING, "setting", adjust.setting().text()));
  }

  @Override
  public String set(Act.Set set) {
    String value = value(Slot.EXTRA, set.setting(), set.value());
    return of(set.owner(), orElse("step.set", set.setting(), value));
  }

  @Override
  public String setLoad(Act.SetLoad setLoad) {
    String load = value(Slot.LOAD, "load", setLoad.text());
    return of(setLoad.unit(), orElse("step.load", load));
  }

  @Override
  public String free(Act.Free free) {
    return authors();
  }

  @Override
  public String run(Act.Run run) {
    String own =
        switch (run.kind()) {
          case START -> "step.start";
          case HOLD -> "step.hold";
          default -> "step.stop";
        };
    held = run.released();
    boolean named = words != null && words.has(Slot.HELD);
    String release = held == null || named ? "" : language.of("step.release", button(held));
    if (run.unit().isDevice() && words == null) {
      return held == null ? language.of("step.stop.output") : release;
    }
    return (release.isEmpty() ? "" : release + " ") + of(run.unit(), orElse(own));
  }

  private String button(Act.Pressed pressed) {
    Lead accessory = pressed.accessory();
    String title = pressed.contact().title();
    return accessory == null
        ? language.of("button", title)
        : language.of("button.of", title, accessory.title());
  }

  /** An author's text that does not say which key or button it is has that said after it. */
  @Override
  public String activate(Act.Activate activate) {
    Act.Pressed pressed = activate.pressed();
    Terminal key = activate.key();
    boolean held = pressed != null && pressed.accessory() != null;
    String whose = activate.instrument() == null ? "" : activate.instrument();
    String kind =
        key != null ? (whose.isEmpty() ? ".key" : ".key.of") : held ? ".accessory" : ".hand";
    String with =
        key != null ? language.of("button", key.title()) : pressed == null ? null : button(pressed);
    String text;
    if (words == null) {
      text =
          with == null
              ? language.of("step.activate")
              : language.of("step.activate" + kind, with, whose);
    } else {
      text = words.text(this::said);
      text +=
          with == null || words.has(Slot.KEY) || words.has(Slot.CONTACT)
              ? ""
              : " " + language.of("step.use" + kind, with, whose);
    }
    return activate.beside() ? language.of("step.beside", text) : text;
  }

  @Override
  public String shown(Act.Shown shown) {
    Figure setting = shown.setting();
    String outlet = shown.outlet().title();
    String mode = shown.mode().title();
    return setting == null
        ? language.of("step.shown", outlet, mode)
        : language.of("step.shown.at", outlet, mode, language.number(setting.text()));
  }

  @Override
  public String read(Act.Read read) {
    if (read.sweep() != null && words == null) {
      return of(read.by(), swept(read.sweep()));
    }
    String key = read.by().isDevice() ? "step.read.device" : "step.read";
    String said = orElse(key, names(read.what()));
    boolean named = words == null || !read.ofSeveral();
    return of(
        read.by(), named ? said : language.of("step.of", language.term(read.what().get(0)), said));
  }

  private String names(List<String> what) {
    if (what.isEmpty()) {
      return language.of("value");
    }
    List<String> nouns = new ArrayList<>();
    what.forEach(one -> nouns.add(language.within(language.term(one))));
    return joined("list.and.the", nouns);
  }

  private String joined(String key, List<String> texts) {
    String all = texts.get(0);
    for (String text : texts.subList(1, texts.size())) {
      all = language.of(key, all, text);
    }
    return all;
  }

  private String swept(Stage.Swept sweep) {
    return language.of(
        sweep.up() ? "step.sweep.up" : "step.sweep.down",
        language.within(language.term(sweep.what())),
        language.number(sweep.from().text()),
        language.number(sweep.step().text()),
        language.number(sweep.to().text()),
        sweep.until());
  }

  @Override
  public String perform(Act.Perform perform) {
    return of(perform.owner(), authors());
  }

  @Override
  public String pause(Act.Wait wait) {
    String time = language.number(wait.time().text());
    return words == null
        ? language.of("step.wait", time)
        : language.of("step.wait.for", time, words.text(this::said));
  }

  @Override
  public String rest(Act.Rest rest) {
    return language.of("step.rest", language.number(rest.time().text()));
  }

  @Override
  public String confirm(Act.Confirm confirm) {
    return authors();
  }

  @Override
  public String noted(Act.Noted noted) {
    return authors();
  }

  @Override
  public String caution(Act.Caution caution) {
    return authors();
  }

  @Override
  public String choose(Act.Choose choose) {
    return authors();
  }

  @Override
  public String ready(Act.Ready ready) {
    List<String> states = new ArrayList<>();
    ready.states().forEach(state -> states.add(language.of("quoted", state.title())));
    return states.isEmpty()
        ? language.of("step.ready")
        : language.of("step.ready.states", joined("list.or", states));
  }

  @Override
  public String stays(Act.Stays stays) {
    return stays.value() == null
        ? language.of("step.stays.last", stays.title())
        : language.of("step.stays", stays.title(), language.number(stays.value()));
  }
}
