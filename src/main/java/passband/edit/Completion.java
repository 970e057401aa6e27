package passband.edit;

import java.util.Collection;
import java.util.List;
import passband.parse.CursorContext;

/**
 * What may be written at a cursor.
 *
 * @param label the word itself
 * @param kind what it is: a kind of declaration, {@code keyword}, {@code unit}, {@code quantity},
 *     {@code column} or {@code code}
 * @param detail a few words about it
 * @param from the offset from which it takes the place of what is typed
 */
public record Completion(String label, String kind, String detail, int from) {

  /**
   * The proposals at an offset; of the kind of thing that belongs there.
   *
   * @param files the paths of the library's files, which a use may name
   */
  public static List<Completion> at(Analysis analysis, int offset, Collection<String> files) {
    CursorContext place = CursorContext.at(analysis.source(), offset);
    if (place.inText()) {
      return TextCompletions.at(analysis, offset, files);
    }
    Completions proposals = new Completions(analysis, place);
    proposals.propose();
    return proposals.list();
  }
}
