package passband.syntax;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.source.Span;

/** What is adjusted between two phases, and the tests whose results it changes. */
public record Adjust(
    Word name, @Nullable Word title, List<Word> affects, List<Step> steps, Span span)
    implements Tree.Part {}
