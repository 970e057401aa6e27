package passband.record;

import org.jspecify.annotations.Nullable;

/** An instrument that was used on a visit; null for what was not written down. */
public record UsedInstrument(
    String role,
    String name,
    @Nullable String serial,
    @Nullable String due,
    @Nullable String certificate) {}
