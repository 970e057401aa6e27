package passband.plan;

import java.util.List;

/**
 * An author's text: what it says, and placeholders by what they stand for. Values are known by
 * their placeholders, so that nobody has to look for them in the text.
 */
public record Words(List<Part> parts) {
  /** Copies the parts. */
  public Words {
    parts = List.copyOf(parts);
  }

  /** A part of a text. */
  public sealed interface Part {}

  /** Plain words. */
  public record Said(String text) implements Part {}

  /**
   * A placeholder.
   *
   * @param name as between the braces
   * @param text what it stands for, as printed
   */
  public record Filled(Slot slot, String name, String text) implements Part {}

  /** What is printed in the place of a placeholder. */
  public interface Printer {
    /** The printed words. */
    String of(Filled filled);
  }

  /** The text with its placeholders printed in another way. */
  public String text(Printer printer) {
    StringBuilder text = new StringBuilder();
    for (Part part : parts) {
      text.append(part instanceof Filled filled ? printer.of(filled) : ((Said) part).text);
    }
    return text.toString();
  }

  /** The text as the author wrote it: {@code Turn the {outlet} knob}. */
  public String template() {
    return text(filled -> "{" + filled.name + "}");
  }

  /** Whether a placeholder stands for this. */
  public boolean has(Slot slot) {
    for (Part part : parts) {
      if (part instanceof Filled filled && filled.slot == slot) {
        return true;
      }
    }
    return false;
  }
}
