package passband.model;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.syntax.SettingOption;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * A setting of the device or the analyzer besides the mode's own.
 *
 * @param options what it can be set to; null when it is a quantity
 * @param series the values it can be set to; null when it is one of several names
 * @param leave what it is set back to after each run, as printed; null where nothing is said
 */
public record ExtraSetting(
    Word name,
    String title,
    @Nullable List<SettingOption> options,
    @Nullable Series series,
    @Nullable Word leave,
    Tree.ExtraSetting tree)
    implements Named {}
