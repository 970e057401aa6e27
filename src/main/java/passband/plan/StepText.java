package passband.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import passband.model.Lead;
import passband.model.Terminal;

/**
 * A step in the words of the sheet: the author's, or sentences made of the operands where the
 * author gives none. All sentences of the compiler's own for steps are here; no digest knows them.
 */
public final class StepText implements Act.Visitor<String> {
  private final Words.Printer values;
  private final @Nullable Words words;

  private StepText(Words.Printer values, @Nullable Words words) {
    this.values = values;
    this.words = words;
  }

  /** The step as it is done at its point. */
  public static String of(PlanStep step) {
    return step.act().accept(new StepText(StepText::value, step.words()));
  }

  /** The step as it is done at each of several lines, which hold the values that differ. */
  public static String forEachLine(PlanStep step) {
    return step.act().accept(new StepText(StepText::onTheLine, step.words()));
  }

  /** What a placeholder stands for. */
  static String value(Words.Filled filled) {
    return filled.slot() == Slot.RECORD ? "the recorded “" + filled.text() + "”" : filled.text();
  }

  private static String onTheLine(Words.Filled filled) {
    return switch (filled.slot()) {
      case SETTING -> "the setting on the line";
      case LOAD -> "the load on the line";
      case EXTRA -> "the " + filled.name().replace('-', ' ') + " on the line";
      default -> value(filled);
    };
  }

  private String value(Slot slot, String name, String text) {
    return values.of(new Words.Filled(slot, name, text));
  }

  private String orElse(String own) {
    return words == null ? own : words.text(values);
  }

  @Override
  public String select(Act.Select select) {
    return orElse("Select the mode " + select.mode().title() + ".");
  }

  @Override
  public String adjust(Act.Adjust adjust) {
    return orElse("Set " + value(Slot.SETTING, "setting", adjust.setting().text()) + ".");
  }

  @Override
  public String set(Act.Set set) {
    String value = value(Slot.EXTRA, set.setting(), set.value());
    return set.owner().said(orElse("Set " + set.setting() + " to " + value + "."));
  }

  @Override
  public String setLoad(Act.SetLoad setLoad) {
    String load = value(Slot.LOAD, "load", setLoad.text());
    return setLoad.unit().said(orElse("Set the load to " + load + "."));
  }

  @Override
  public String free(Act.Free free) {
    return orElse("");
  }

  @Override
  public String run(Act.Run run) {
    String own =
        switch (run.kind()) {
          case START -> "Start the measurement.";
          case HOLD -> "Hold the reading.";
          default -> "Stop the output and the measurement.";
        };
    String release = run.released() == null ? "" : "Let go of the " + button(run.released()) + ". ";
    if (run.unit().isDevice() && words == null) {
      return release.trim();
    }
    return release + run.unit().said(orElse(own));
  }

  private static String button(Act.Pressed pressed) {
    Lead accessory = pressed.accessory();
    return button(pressed.contact()) + (accessory == null ? "" : " of the " + accessory.title());
  }

  private static String button(Terminal contact) {
    return "\u201c" + contact.title() + "\u201d";
  }

  /** An author's text that does not say which key or button it is has that said after it. */
  @Override
  public String activate(Act.Activate activate) {
    Act.Pressed pressed = activate.pressed();
    String with =
        activate.key() != null
            ? "the analyzer's key " + button(activate.key())
            : pressed == null ? null : "the " + button(pressed);
    String hand = pressed == null || pressed.accessory() != null ? "" : " by hand";
    if (words == null) {
      return "Activate the output" + hand + (with == null ? "." : " with " + with + ".");
    }
    boolean said = with == null || words.has(Slot.KEY) || words.has(Slot.CONTACT);
    return words.text(values) + (said ? "" : " Use " + with + hand + ".");
  }

  @Override
  public String read(Act.Read read) {
    if (read.sweep() != null && words == null) {
      return read.by().said(swept(read.sweep()));
    }
    String on = read.by().isDevice() ? " that the generator itself shows" : "";
    return read.by().said(orElse("Read and write down the " + names(read.what()) + on + "."));
  }

  private static String names(List<String> what) {
    return what.isEmpty() ? "value" : String.join(" and the ", what).toLowerCase(Locale.ROOT);
  }

  private static String swept(Stage.Swept sweep) {
    return "Change the "
        + sweep.what()
        + (sweep.up() ? " up" : " down")
        + " from "
        + sweep.from().text()
        + " in steps of "
        + sweep.step().text()
        + ", to "
        + sweep.to().text()
        + " at most, until "
        + sweep.until()
        + ". Write down the "
        + sweep.what()
        + " at which it did.";
  }

  @Override
  public String perform(Act.Perform perform) {
    return perform.owner().said(orElse(""));
  }

  @Override
  public String pause(Act.Wait wait) {
    String time = "Wait " + wait.time().text();
    return words == null ? time + "." : time + ": " + words.text(values);
  }

  @Override
  public String confirm(Act.Confirm confirm) {
    return orElse("");
  }

  @Override
  public String noted(Act.Noted noted) {
    return orElse("");
  }

  @Override
  public String caution(Act.Caution caution) {
    return orElse("");
  }

  @Override
  public String choose(Act.Choose choose) {
    return orElse("");
  }

  @Override
  public String ready(Act.Ready ready) {
    List<String> states = new ArrayList<>();
    ready.states().forEach(state -> states.add(state.title()));
    String bare = "no lead is connected to the generator or the analyzer";
    return states.isEmpty()
        ? "The output is off, and " + bare + "."
        : "The output is off, "
            + bare
            + ", and the generator is not in "
            + String.join(" or ", states)
            + ".";
  }

  @Override
  public String stays(Act.Stays stays) {
    return stays.value() == null
        ? stays.title() + " stays as it was set last."
        : stays.title() + " stays at " + stays.value() + ".";
  }
}
