import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Makes what people download, from the jar: a zip for those with Java, one with its own Java for
 * the system this runs on, a Debian package where there is {@code dpkg-deb}, the extension for VS
 * Code, and the checksums of all. The same sources give the same bytes.
 *
 * <p>usage: java Distribution BASE TARGET VERSION TIME RUNTIME-CLASSPATH, where TARGET has {@code
 * passband.jar}, {@code bom.json} and this program's classes in {@code dist-classes}
 */
public final class Distribution {
  /** jdeps misses the last two: PDFBox asks for one, a console's code page for the other. */
  private static final String MODULES =
      "java.base,java.desktop,java.sql,jdk.unsupported,jdk.charsets";

  private final Path base;
  private final Path target;
  private final Path dist;
  private final String version;
  private final Instant time;

  private Distribution(Path base, Path target, String version, Instant time) {
    this.base = base;
    this.target = target;
    this.dist = target.resolve("dist");
    this.version = version;
    this.time = time;
  }

  public static void main(String[] arguments) throws IOException, InterruptedException {
    Distribution distribution =
        new Distribution(
            Path.of(arguments[0]),
            Path.of(arguments[1]),
            arguments[2],
            Instant.parse(arguments[3]));
    distribution.make(Stream.of(arguments[4].split(File.pathSeparator)).map(Path::of).toList());
  }

  private void make(List<Path> carried) throws IOException, InterruptedException {
    if (!Files.exists(target.resolve("bom.json"))) {
      throw new IllegalStateException(
          "no bom.json: Maven makes the bill of materials only with a network, so not with -o");
    }
    Archive.delete(dist);
    Path work = Files.createDirectories(target.resolve("dist-work"));
    Archive.delete(work);
    Path portable = portable(work.resolve("portable"), carried);
    Files.createDirectories(dist);
    String name = "passband-" + version;
    zip(portable, name, name + ".zip");
    debian(work.resolve("debian"), portable);
    extension(work.resolve("vscode"), portable);
    ownJava(portable);
    zip(portable, name, name + "-" + system() + ".zip");
    List<String> names = List.copyOf(Archive.files(dist).keySet());
    Files.writeString(dist.resolve("SHA256SUMS"), Archive.sums("SHA-256", dist, names));
  }

  private void zip(Path folder, String within, String archive) throws IOException {
    Files.deleteIfExists(folder.resolve("SHA256SUMS"));
    List<String> names = List.copyOf(Archive.files(folder).keySet());
    Files.writeString(folder.resolve("SHA256SUMS"), Archive.sums("SHA-256", folder, names));
    Archive.zip(folder, within + "/", dist.resolve(archive), time.toEpochMilli());
  }

  // ---- for every system ----

  private Path portable(Path to, List<Path> carried) throws IOException {
    Path lib = Files.createDirectories(to.resolve("lib"));
    Files.copy(target.resolve("passband.jar"), lib.resolve("passband.jar"));
    Path start = target.resolve("dist-classes/start/Start.class");
    Archive.startJar(start, "passband.jar", lib.resolve("passband-start.jar"), time.toEpochMilli());
    Path launcher = Files.copy(base.resolve("src/dist/passband"), to.resolve("passband"));
    launcher.toFile().setExecutable(true, false);
    // cmd.exe loses its place in a batch file without carriage returns.
    String batch = Files.readString(base.resolve("src/dist/passband.cmd")).replace("\r", "");
    Files.writeString(to.resolve("passband.cmd"), batch.replace("\n", "\r\n"));
    Archive.copy(base.resolve("procedures"), to.resolve("procedures"));
    new Pages(base, to).write();
    Files.copy(target.resolve("bom.json"), to.resolve("bom.json"));
    Licences licences = new Licences(base.resolve("src/dist/licences"), to.resolve("licences"));
    for (Path one : carried) {
      if (one.toString().endsWith(".jar")) {
        licences.jar(one);
      }
    }
    licences.entry("DejaVu fonts", target.resolve("passband.jar"), "passband/fonts/LICENSE.txt");
    licences.list();
    return to;
  }

  // ---- with its own Java ----

  private void ownJava(Path folder) throws IOException, InterruptedException {
    Path runtime = folder.resolve("runtime");
    Path home = Path.of(System.getProperty("java.home"));
    run(
        folder,
        home.resolve("bin/jlink").toString(),
        "--add-modules",
        MODULES,
        "--strip-java-debug-attributes",
        "--no-header-files",
        "--no-man-pages",
        "--output",
        runtime.toString());
  }

  /** The system that this runs on, as it stands in a file's name: {@code linux-x64}. */
  private static String system() {
    String name = System.getProperty("os.name").toLowerCase(Locale.ROOT);
    String system = name.startsWith("win") ? "windows" : name.startsWith("mac") ? "macos" : "linux";
    String processor = System.getProperty("os.arch");
    return system
        + "-"
        + (processor.equals("amd64") || processor.equals("x86_64") ? "x64" : processor);
  }

  // ---- Debian ----

  private void debian(Path tree, Path portable) throws IOException, InterruptedException {
    if (!onPath("dpkg-deb")) {
      System.out.println("distribution: no dpkg-deb here, so no Debian package");
      return;
    }
    Path share = tree.resolve("usr/share/passband");
    Archive.copy(portable, share);
    Files.delete(share.resolve("passband.cmd"));
    Files.delete(share.resolve("SHA256SUMS"));
    link(tree.resolve("usr/bin/passband"), "../share/passband/passband");
    Path doc = Files.createDirectories(tree.resolve("usr/share/doc/passband"));
    Files.copy(share.resolve("licences/LIST.txt"), doc.resolve("copyright"));
    link(doc.resolve("html"), "../../passband");
    Path start = share.resolve("lib/passband-start.jar");
    completion(start, "bash", tree.resolve("usr/share/bash-completion/completions/passband"));
    completion(start, "zsh", tree.resolve("usr/share/zsh/vendor-completions/_passband"));
    completion(start, "fish", tree.resolve("usr/share/fish/vendor_completions.d/passband.fish"));
    control(tree);
    openForAll(tree);
    // It takes times and owners from these, and packs in the order of the names.
    run(
        target,
        Map.of("SOURCE_DATE_EPOCH", Long.toString(time.getEpochSecond())),
        "dpkg-deb",
        "--root-owner-group",
        "-Zxz",
        "--build",
        tree.toString(),
        dist.resolve("passband_" + version + "_all.deb").toString());
  }

  private static void link(Path link, String to) throws IOException {
    Files.createDirectories(link.getParent());
    Files.createSymbolicLink(link, Path.of(to));
  }

  private void completion(Path jar, String shell, Path to)
      throws IOException, InterruptedException {
    Files.createDirectories(to.getParent());
    Files.writeString(to, passband(jar, "completion", shell));
  }

  private void control(Path tree) throws IOException {
    Path control = Files.createDirectories(tree.resolve("DEBIAN"));
    long size = 0;
    for (Path file : Archive.files(tree.resolve("usr")).values()) {
      size += (Files.size(file) + 1023) / 1024;
    }
    List<String> names = new ArrayList<>();
    Archive.files(tree.resolve("usr")).keySet().forEach(n -> names.add("usr/" + n));
    Files.writeString(control.resolve("md5sums"), Archive.sums("MD5", tree, names));
    Files.writeString(
        control.resolve("control"),
        Files.readString(base.resolve("src/dist/control"))
            .replace("VERSION", version)
            .replace("SIZE", Long.toString(size)));
  }

  /** Whatever the umask was here, everybody may read what is installed. */
  private static void openForAll(Path tree) throws IOException {
    try (Stream<Path> all = Files.walk(tree)) {
      for (Path one : all.filter(f -> !Files.isSymbolicLink(f)).toList()) {
        boolean program = Files.isDirectory(one) || Files.isExecutable(one);
        Files.setPosixFilePermissions(
            one,
            java.nio.file.attribute.PosixFilePermissions.fromString(
                program ? "rwxr-xr-x" : "rw-r--r--"));
      }
    }
  }

  // ---- VS Code ----

  private void extension(Path folder, Path portable) throws IOException, InterruptedException {
    Archive.copy(base.resolve("src/dist/vscode"), folder);
    String npm = system().startsWith("windows") ? "npm.cmd" : "npm";
    run(folder, npm, "ci", "--ignore-scripts", "--prefer-offline", "--silent");
    run(folder, npm, "run", "--silent", "bundle");
    Path to = folder.resolve("vsix");
    Path inside = Files.createDirectories(to.resolve("extension"));
    Files.move(folder.resolve("client.bundle.js"), inside.resolve("client.js"));
    for (String name : List.of("package.json", "README.md")) {
      String text = Files.readString(folder.resolve(name)).replace("0.0.0", version);
      Files.writeString(inside.resolve(name), text);
    }
    String manifest = Files.readString(folder.resolve("extension.vsixmanifest"));
    Files.move(folder.resolve("content-types.xml"), to.resolve("[Content_Types].xml"));
    Files.writeString(to.resolve("extension.vsixmanifest"), manifest.replace("0.0.0", version));
    Archive.copy(portable.resolve("lib"), inside.resolve("server"));
    Path jar = inside.resolve("server/passband-start.jar");
    Files.writeString(
        inside.resolve("passband.tmLanguage.json"), passband(jar, "editor", "textmate"));
    Files.writeString(
        inside.resolve("language-configuration.json"),
        passband(jar, "editor", "language-configuration"));
    Archive.copy(portable.resolve("licences"), inside.resolve("licences"));
    nodeLicences(folder.resolve("node_modules"), inside.resolve("licences"));
    Files.copy(portable.resolve("bom.json"), inside.resolve("bom.json"));
    // npm puts a random number and the time into its list.
    String bom = read(folder, npm, "sbom", "--omit=dev", "--sbom-format=cyclonedx");
    Files.writeString(
        inside.resolve("bom-client.json"),
        bom.replaceAll("(?m)^\\s*\"(serialNumber|timestamp)\": .*\\R", ""));
    Archive.zip(to, "", dist.resolve("passband-" + version + ".vsix"), time.toEpochMilli());
  }

  private void nodeLicences(Path modules, Path to) throws IOException {
    Licences licences = new Licences(base.resolve("src/dist/licences"), to.resolve("client"));
    for (Map.Entry<String, Path> file : Archive.files(modules).entrySet()) {
      String[] parts = file.getKey().split("/");
      boolean carried = parts.length == 2 && !parts[0].equals("esbuild");
      if (carried && parts[1].toLowerCase(Locale.ROOT).matches("(licen[cs]e|thirdparty).*")) {
        licences.text(parts[0], file.getValue());
      }
    }
    licences.list();
  }

  // ---- programs ----

  private String passband(Path jar, String... words) throws IOException, InterruptedException {
    List<String> line = new ArrayList<>();
    line.add(Path.of(System.getProperty("java.home")).resolve("bin/java").toString());
    line.addAll(List.of("-jar", jar.toString()));
    line.addAll(List.of(words));
    return read(target, line.toArray(String[]::new));
  }

  private static boolean onPath(String program) {
    return Stream.of(System.getenv("PATH").split(File.pathSeparator))
        .anyMatch(f -> Files.isExecutable(Path.of(f, program)));
  }

  private static void run(Path folder, String... line) throws IOException, InterruptedException {
    run(folder, Map.of(), line);
  }

  private static void run(Path folder, Map<String, String> environment, String... line)
      throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder(line).directory(folder.toFile()).inheritIO();
    builder.environment().putAll(environment);
    ended(builder.start(), line);
  }

  private static String read(Path folder, String... line) throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(line)
            .directory(folder.toFile())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    ended(process, line);
    return text;
  }

  private static void ended(Process process, String... line) throws InterruptedException {
    if (process.waitFor() != 0) {
      throw new IllegalStateException(
          String.join(" ", line) + " ended with " + process.exitValue());
    }
  }
}
