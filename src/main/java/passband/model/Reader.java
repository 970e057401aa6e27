package passband.model;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.model.Analyzer.Measure;
import passband.syntax.Word;

/** What shows a reading: an instrument, or the generator by its own display. */
public sealed interface Reader permits Analyzer, Device {
  /** The role of an instrument, or {@code device}. */
  String role();

  /** The name of its declaration. */
  Word name();

  /** What it measures. */
  List<Measure> measures();

  /** How the quantity is measured, or null when it is not. */
  default @Nullable Measure measure(String quantity) {
    for (Measure measure : measures()) {
      if (measure.quantity().name().equals(quantity)) {
        return measure;
      }
    }
    return null;
  }
}
