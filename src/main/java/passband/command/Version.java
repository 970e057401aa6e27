package passband.command;

/** Which version of the program this is. */
final class Version {
  private Version() {}

  /** As the jar says it. */
  static String text() {
    String version = Version.class.getPackage().getImplementationVersion();
    return version == null ? "(not packaged)" : version;
  }
}
