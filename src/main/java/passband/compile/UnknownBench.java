package passband.compile;

import java.util.List;
import java.util.Map;
import passband.model.Analyzer;
import passband.model.Device;
import passband.model.Instruments;
import passband.source.SourceFile;
import passband.source.Span;
import passband.syntax.Ratings;
import passband.syntax.Tree;
import passband.syntax.Word;

/** The bench of lines that no procedure has taken up: whatever they name, it may have. */
final class UnknownBench {
  private static final Span NOWHERE = new Span(new SourceFile("", ""), 0, 0);

  /** A generator of which nothing is known. */
  static final Device DEVICE = device(new Word(Instruments.DEVICE, NOWHERE));

  /** An instrument of which nothing is known. */
  static final Instruments INSTRUMENTS =
      new Instruments(List.of(taken(new Word(Instruments.ONLY, NOWHERE))));

  private UnknownBench() {}

  /** Whether this is the generator of which nothing is known. */
  static boolean is(Device device) {
    return device == DEVICE;
  }

  private static Device device(Word name) {
    return new Device(
        name,
        name.text(),
        List.of(),
        List.of(),
        Map.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        new Tree.Device(
            name, null, List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(),
            List.of(), NOWHERE));
  }

  private static Instruments.Taken taken(Word role) {
    Tree.Analyzer tree =
        new Tree.Analyzer(
            role,
            null,
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            new Ratings.Timing(null, null, null),
            List.of(),
            List.of(),
            NOWHERE);
    return new Instruments.Taken(
        role,
        new Analyzer(
            role.text(),
            role,
            role.text(),
            List.of(),
            List.of(),
            List.of(),
            Map.of(),
            new Analyzer.Timing(null, null, null),
            List.of(),
            tree));
  }
}
