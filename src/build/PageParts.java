import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;

/**
 * Writes the script and the style of the technician's page as they stand in it: the parts put
 * together, without comments and white space and with short names for what is local to a function.
 * esbuild does that; the names of the parts stay, and no code is left out.
 *
 * <p>usage: java -cp PLATFORM.jar PageParts.java PLATFORM VERSION FOLDER CLASSES
 */
public final class PageParts {
  /** In the order in which they stand in the page. */
  private static final List<String> SCRIPTS =
      List.of(
          "words",
          "causes",
          "ratio",
          "units",
          "blanks",
          "formula",
          "verdicts",
          "readings",
          "dom",
          "items",
          "fields",
          "shown",
          "order",
          "kept",
          "files",
          "timer",
          "oneline",
          "start",
          "checklist");

  private final Path esbuild;

  private PageParts(Path esbuild) {
    this.esbuild = esbuild;
  }

  public static void main(String[] args) throws IOException, InterruptedException {
    Path sources = Path.of(args[2]);
    Path classes = Path.of(args[3]);
    StringBuilder script = new StringBuilder();
    for (String name : SCRIPTS) {
      script.append(Files.readString(sources.resolve(name + ".js")));
    }
    String style = Files.readString(sources.resolve("checklist.css"));
    Path folder = Files.createDirectories(classes.resolve("passband/render"));
    PageParts parts = new PageParts(program(args[0], args[1], classes.getParent()));
    Files.writeString(folder.resolve("page.js"), parts.smaller("js", script.toString()));
    Files.writeString(folder.resolve("page.css"), parts.smaller("css", style));
  }

  /** The program, unpacked from its jar. */
  private static Path program(String platform, String version, Path target) throws IOException {
    Path program = target.resolve("esbuild-" + platform + "-" + version);
    if (!Files.exists(program)) {
      String name = "META-INF/resources/_static/" + platform + "/" + version + "/bin/esbuild";
      try (InputStream in = ClassLoader.getSystemResourceAsStream(name)) {
        if (in == null) {
          throw new IOException("the class path has no " + name);
        }
        Path written = Files.createTempFile(target, "esbuild", null);
        Files.copy(in, written, StandardCopyOption.REPLACE_EXISTING);
        if (!written.toFile().setExecutable(true)) {
          throw new IOException(written + " cannot be made executable");
        }
        Files.move(written, program, StandardCopyOption.ATOMIC_MOVE);
      }
    }
    return program;
  }

  private String smaller(String loader, String source) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of(esbuild.toString(), "--loader=" + loader));
    command.addAll(List.of("--minify", "--charset=utf8", "--target=esnext", "--log-level=warning"));
    Process process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    try (var in = process.getOutputStream()) {
      in.write(source.getBytes(StandardCharsets.UTF_8));
    }
    String made = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    if (process.waitFor() != 0) {
      throw new IOException(String.join(" ", command) + " failed");
    }
    return made;
  }
}
