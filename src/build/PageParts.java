import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Writes the script and the style of the technician's page as they stand in it: without comments
 * and white space and with short names. The script is written for each choice of what a sheet may
 * do without, each {@code page-N.js} without what it does not need. esbuild does that.
 *
 * <p>usage: java -cp PLATFORM.jar PageParts.java PLATFORM VERSION FOLDER CLASSES
 */
public final class PageParts {
  /** What a sheet may do without; N has the bit of each that it needs ({@code render.PageCode}). */
  private static final List<String> NEEDS = List.of("DERIVED", "GATES", "WAVES", "CONDITIONS");

  private static final Pattern SENTENCE = Pattern.compile("WORDS\\.(\\w+)");

  private final Path esbuild;

  private PageParts(Path esbuild) {
    this.esbuild = esbuild;
  }

  public static void main(String[] args) throws IOException, InterruptedException {
    Path sources = Path.of(args[2]);
    Path classes = Path.of(args[3]);
    Path folder = Files.createDirectories(classes.resolve("passband/render"));
    PageParts parts = new PageParts(program(args[0], args[1], classes.getParent()));
    List<String> sentences = List.copyOf(sentences(sources.resolve("page")));
    Files.write(folder.resolve("page-words.txt"), sentences);
    for (int needed = 0; needed < 1 << NEEDS.size(); needed++) {
      List<String> command = parts.command("--bundle", "--format=iife");
      command.add(sources.resolve("page/checklist.js").toString());
      for (int i = 0; i < NEEDS.size(); i++) {
        command.add("--define:HAS_" + NEEDS.get(i) + "=" + ((needed >> i & 1) == 1));
      }
      for (int i = 0; i < sentences.size(); i++) {
        command.add("--define:WORDS." + sentences.get(i) + "=W" + i);
      }
      Files.writeString(folder.resolve("page-" + needed + ".js"), output(command, ""));
    }
    String style = Files.readString(sources.resolve("checklist.css"));
    Files.writeString(
        folder.resolve("page.css"),
        output(parts.command("--loader=css", "--supported:nesting=false"), style));
  }

  /** What the scripts ask for of the words of a language: the first is {@code W0} in the page. */
  private static TreeSet<String> sentences(Path scripts) throws IOException {
    TreeSet<String> keys = new TreeSet<>();
    try (Stream<Path> files = Files.list(scripts)) {
      for (Path file : files.toList()) {
        SENTENCE.matcher(Files.readString(file)).results().forEach(key -> keys.add(key.group(1)));
      }
    }
    return keys;
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

  private List<String> command(String... options) {
    List<String> command = new ArrayList<>(List.of(esbuild.toString()));
    command.addAll(List.of("--minify", "--charset=utf8", "--target=esnext", "--log-level=warning"));
    command.addAll(List.of(options));
    return command;
  }

  private static String output(List<String> command, String input)
      throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    try (var in = process.getOutputStream()) {
      in.write(input.getBytes(StandardCharsets.UTF_8));
    }
    String made = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    if (process.waitFor() != 0) {
      throw new IOException(String.join(" ", command) + " failed");
    }
    return made;
  }
}
