package passband.command;

/** What an argument, or the value of an option, stands for. */
enum ArgumentKind {
  /** An option without a value. */
  FLAG("none"),
  /** One of a few words. */
  ONE_OF("none"),
  /** Several of a few words, with commas between. */
  LIST_OF("none"),
  FILE("files"),
  FOLDER("folders"),
  /** A source, or a folder of them. */
  SOURCES("files"),
  /** A name of the language's, which the compiler alone knows. */
  NAME("none"),
  /** A day, as 2026-01-31. */
  DATE("none"),
  /** A number of days, at least 1. */
  DAYS("none");

  private final String completion;

  ArgumentKind(String completion) {
    this.completion = completion;
  }

  /** What a shell proposes for it beside words of its own: files, folders or none. */
  String completion() {
    return completion;
  }
}
