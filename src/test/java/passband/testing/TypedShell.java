package passband.testing;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A shell that has Passband on its path, as an installation puts it there, and a home of its own
 * with nothing in it: nobody has told git a name.
 */
public final class TypedShell {
  /** What a page shows: a block between fences, or lines that are set in. */
  public static final Pattern PIECE =
      Pattern.compile(
          "(?ms)^```(?<info>[^\\n]*)\\n(?<body>.*?)^```$|(?<lines>(?:^    \\S[^\\n]*\\n)+)");

  private final Path work;

  /**
   * @param work holds what the shell needs, beside the folders in which is typed
   */
  public TypedShell(Path work) throws IOException {
    this.work = work;
    Files.createDirectories(work.resolve("bin"));
    Files.writeString(
        passband(),
        "#!/bin/sh\nexec '"
            + Path.of(System.getProperty("java.home"), "bin", "java")
            + "' -XX:TieredStopAtLevel=1 -Dslf4j.internal.verbosity=ERROR -cp '"
            + System.getProperty("java.class.path")
            + "' passband.command.Main \"$@\"\n");
    assertTrue(passband().toFile().setExecutable(true));
  }

  /** The program. */
  public Path passband() {
    return work.resolve("bin/passband");
  }

  /** What a line printed. */
  public record Said(String text, int status) {}

  /** Types a line in a folder. */
  public Said type(Path folder, String line) throws IOException, InterruptedException {
    Path said = work.resolve("said.txt");
    ProcessBuilder shell =
        new ProcessBuilder("bash", "-c", line)
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .redirectOutput(said.toFile());
    shell.environment().merge("PATH", work.resolve("bin").toString(), (p, own) -> own + ":" + p);
    shell.environment().keySet().removeIf(name -> name.startsWith("GIT_"));
    shell.environment().put("HOME", work.toString());
    Process process = shell.start();
    assertTrue(process.waitFor(120, TimeUnit.SECONDS), line);
    String text = Files.readString(said).replace("(not packaged)", version());
    return new Said(text, process.exitValue());
  }

  /** The tests run from classes, which do not know it; the jar does. */
  private static String version() {
    Matcher version =
        Pattern.compile("<artifactId>passband</artifactId>\\s*<version>(.*?)</version>")
            .matcher(Repository.text(Repository.ROOT.resolve("pom.xml")));
    assertTrue(version.find());
    return version.group(1);
  }
}
