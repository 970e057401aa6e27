package passband.syntax;

import org.jspecify.annotations.Nullable;

/** {@code NAME ["TITLE"]}: what a setting can be set to, and what is printed for it. */
public record SettingOption(Word name, @Nullable Word title) {
  /** As printed: its title, else its name. */
  public Word printed() {
    return title == null ? name : title;
  }
}
