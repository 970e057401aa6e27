package passband.edit;

import java.util.List;
import passband.quantity.Table;

/**
 * A form inside lines of the language, as the reference lists it.
 *
 * @param group what it is a form of: limits, series, columns of a table, actions, writing
 * @param form how it is written
 * @param meaning what it says, in a sentence
 * @param kind where the example belongs: {@code accept}, {@code column}, {@code mode}, {@code
 *     action} of a device, {@code instrument} for an action of one, {@code file}
 * @param example a piece of a source; a line break in it is written {@code \n}
 */
public record LanguageForm(String group, String form, String meaning, String kind, String example) {
  private static final List<LanguageForm> ALL =
      Table.read(LanguageForm.class, "forms.tsv").stream()
          .map(row -> new LanguageForm(row[0], row[1], row[2], row[3], row[4]))
          .toList();

  /** All of them, in the order of the reference. */
  public static List<LanguageForm> all() {
    return ALL;
  }
}
