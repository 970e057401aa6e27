import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import java.util.jar.JarFile;
import java.util.zip.ZipEntry;

/** The texts of the licences of all that is carried, and a list that says what each holds for. */
final class Licences {
  private final Path texts;
  private final Path to;
  private final List<String> list = new ArrayList<>();

  /**
   * @param texts the folder with the texts that jars lack, and {@code texts.tsv}
   * @param to where the texts are written
   */
  Licences(Path texts, Path to) throws IOException {
    this.texts = texts;
    this.to = Files.createDirectories(to);
  }

  /** Those of a jar: what it has inside, and what {@code texts.tsv} names for it; not none. */
  void jar(Path jar) throws IOException {
    String name = jar.getFileName().toString().replaceFirst("\\.jar$", "");
    TreeSet<String> written = new TreeSet<>();
    try (JarFile file = new JarFile(jar.toFile())) {
      for (ZipEntry entry :
          file.stream().sorted((a, b) -> a.getName().compareTo(b.getName())).toList()) {
        if (isLicence(entry.getName())) {
          String as = name + "/" + entry.getName().substring(entry.getName().lastIndexOf('/') + 1);
          try (InputStream in = file.getInputStream(entry)) {
            write(as, in.readAllBytes());
          }
          written.add(as);
        }
      }
    }
    for (String line : Files.readAllLines(texts.resolve("texts.tsv"))) {
      String[] cells = line.split("\t");
      if (!line.startsWith("#") && name.startsWith(cells[0])) {
        write(cells[1], Files.readAllBytes(texts.resolve(cells[1])));
        written.add(cells[1]);
      }
    }
    add(name, written);
  }

  private static boolean isLicence(String entry) {
    String name = entry.toUpperCase(Locale.ROOT);
    return name.matches("(META-INF/)?(LICEN[CS]E|NOTICE|ABOUT|COPYING)[^/]*")
        && !name.endsWith(".CLASS");
  }

  /** A text that lies somewhere. */
  void text(String name, Path text) throws IOException {
    String as = name + "/" + text.getFileName();
    write(as, Files.readAllBytes(text));
    add(name, new TreeSet<>(List.of(as)));
  }

  /** A text that lies in a jar. */
  void entry(String name, Path jar, String entry) throws IOException {
    String as = name + "/" + entry.substring(entry.lastIndexOf('/') + 1);
    try (JarFile file = new JarFile(jar.toFile());
        InputStream in = file.getInputStream(file.getEntry(entry))) {
      write(as, in.readAllBytes());
    }
    add(name, new TreeSet<>(List.of(as)));
  }

  private void add(String name, TreeSet<String> written) {
    if (written.isEmpty()) {
      throw new IllegalStateException(
          "no text of a licence for " + name + ": name one in " + texts.resolve("texts.tsv"));
    }
    list.add(name + ": " + String.join(", ", written));
  }

  private void write(String as, byte[] text) throws IOException {
    Path file = to.resolve(as);
    Files.createDirectories(file.getParent());
    Files.write(file, text);
  }

  /** Writes the list, {@code LIST.txt}; its text. */
  String list() throws IOException {
    String text =
        "Passband carries the work of others. Which text in this folder holds for what:\n\n"
            + String.join("\n", new TreeSet<>(list))
            + "\n\nPassband's own licence is for its owner to choose; none has been chosen yet.\n";
    Files.writeString(to.resolve("LIST.txt"), text);
    return text;
  }
}
