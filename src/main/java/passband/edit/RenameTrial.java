package passband.edit;

import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.resolve.Names.Occurrence;
import passband.source.Span;

/**
 * Compiles a library with a new name before anybody gets the edit: it must have no error that it
 * did not have, and every name must stand for the same as before.
 */
final class RenameTrial {
  private final WholeLibrary before;
  private final WholeLibrary after;
  private final String name;

  private RenameTrial(WholeLibrary before, WholeLibrary after, String name) {
    this.before = before;
    this.after = after;
    this.name = name;
  }

  /** Makes the edits on trial. */
  static void run(WholeLibrary library, TextEdits edits, String name)
      throws Rename.Refused, IOException {
    RenameTrial trial = new RenameTrial(library, library.with(edits), name);
    trial.refuseErrors();
    trial.refuseOtherMeaning(edits);
  }

  /** That a released revision now needs a new label is no fault of the name. */
  private void refuseErrors() throws Rename.Refused {
    Map<Code, Integer> allowed = new HashMap<>();
    before.errors().forEach(error -> allowed.merge(error.code(), 1, Integer::sum));
    for (Diagnostic error : after.errors()) {
      boolean released = error.code() == Code.REVISION_REUSED;
      if (!released && allowed.merge(error.code(), -1, Integer::sum) < 0) {
        throw new Rename.Refused(
            "with the name '%s': %s (%s)", name, error.message(), error.span());
      }
    }
  }

  private void refuseOtherMeaning(TextEdits edits) throws Rename.Refused {
    SortedMap<String, Span> old = meanings(before, edits::moved);
    SortedMap<String, Span> now = meanings(after, span -> span.file().path() + ":" + span.start());
    refuse(old, now);
    refuse(now, old);
  }

  private void refuse(SortedMap<String, Span> one, SortedMap<String, Span> other)
      throws Rename.Refused {
    for (Map.Entry<String, Span> meaning : one.entrySet()) {
      if (!other.containsKey(meaning.getKey())) {
        Span span = meaning.getValue();
        throw new Rename.Refused(
            "with the name '%s', '%s' would refer to something else (%s)", name, span.text(), span);
      }
    }
  }

  /** Each occurrence as the place, what it does there and the place of the declaration. */
  private static SortedMap<String, Span> meanings(
      WholeLibrary library, Function<Span, String> place) {
    SortedMap<String, Span> meanings = new TreeMap<>();
    for (Occurrence one : library.symbols().all()) {
      String declared = place.apply(one.symbol().name().span());
      meanings.put(place.apply(one.span()) + " " + one.role() + " " + declared, one.span());
    }
    return meanings;
  }
}
