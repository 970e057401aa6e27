package passband.syntax;

import java.util.List;
import passband.source.Span;

/** {@code when NAME is "A", "B"}: a part is done only after one of these outcomes. */
public record OnlyWhen(Word choice, List<Word> is, Span span) {}
