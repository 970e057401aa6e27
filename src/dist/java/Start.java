import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;

/**
 * Starts Passband where Java is new enough, and says so where it is not. Compiled for Java 8, which
 * would only name a class file version.
 */
public final class Start {
  private Start() {}

  /** Runs the command line; leaves with 2 where Java is older than 17. */
  public static void main(String[] arguments) throws Throwable {
    String version = System.getProperty("java.specification.version");
    if (Double.parseDouble(version) < 17) {
      System.err.println(
          "passband: this is Java "
              + System.getProperty("java.version")
              + " in "
              + System.getProperty("java.home")
              + "; Passband needs Java 17 or later, or take the download with its own Java");
      System.exit(2);
    }
    Method main = Class.forName("passband.command.Main").getMethod("main", String[].class);
    try {
      main.invoke(null, (Object) arguments);
    } catch (InvocationTargetException e) {
      throw e.getCause();
    }
  }
}
