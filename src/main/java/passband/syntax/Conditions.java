package passband.syntax;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * On which outlets a test is done, how they are wired, in which state, with which output and for
 * how long.
 *
 * @param when the outcomes after which it is done; null where it always is
 * @param output {@code off} or {@code inhibited}; null where a column for the mode tells
 */
public record Conditions(
    List<Word> outlets,
    @Nullable Word setup,
    Tree.@Nullable Ref inside,
    @Nullable OnlyWhen when,
    @Nullable Word output,
    @Nullable Amount onTime) {}
