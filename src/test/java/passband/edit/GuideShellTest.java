package passband.edit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import passband.evidence.LimitsReader;
import passband.testing.Records;
import passband.testing.Repository;

/**
 * The guide as its reader does it: what it shows is typed into files, its commands into a shell,
 * and what it says that they print is compared; {@code -Dgolden.write=true} writes that.
 */
class GuideShellTest {
  private static final Pattern PIECE =
      Pattern.compile(
          "(?ms)^```(?<info>[^\\n]*)\\n(?<body>.*?)^```$|(?<lines>(?:^    \\S[^\\n]*\\n)+)");

  /** What is to be written as it stands. */
  private static final String HINT = "hint: write after the date: ";

  @TempDir Path work;
  private Path folder;
  private String printed = "";
  private String written = "";
  private final List<String> done = new ArrayList<>();

  @Test
  void theGuideIsTypedAsItStands() throws Exception {
    folder = work;
    passband();
    Path page = Repository.ROOT.resolve("src/docs/guide.md");
    String guide = Repository.text(page);
    written = guide;
    Matcher piece = PIECE.matcher(guide.substring(0, guide.indexOf("\n## The rest of the visit")));
    while (piece.find()) {
      if (piece.group("lines") != null) {
        for (String line : piece.group("lines").split("\n")) {
          type(line.strip());
        }
      } else {
        block(piece.group("info"), piece.group("body"));
      }
    }
    for (String file : List.of("judged.html", "report.html", "fleet.html", "diff.html")) {
      assertTrue(Files.readString(folder.resolve(file)).startsWith("<!DOCTYPE html>"), file);
    }
    assertEquals(21, done.size(), done.toString());
    if (Boolean.getBoolean("golden.write")) {
      Files.writeString(page, written);
    }
    type("passband detect sallow.pband");
    type("passband check --released sallow.pband");
  }

  /** The program on the path of the shell, as an installation puts it there. */
  private void passband() throws IOException {
    Path bin = Files.createDirectories(work.resolve("bin"));
    Files.writeString(
        bin.resolve("passband"),
        "#!/bin/sh\nexec '"
            + Path.of(System.getProperty("java.home"), "bin", "java")
            + "' -XX:TieredStopAtLevel=1 -Dslf4j.internal.verbosity=ERROR -cp '"
            + System.getProperty("java.class.path")
            + "' passband.command.Main \"$@\"\n");
    assertTrue(bin.resolve("passband").toFile().setExecutable(true));
  }

  private void block(String info, String body) throws Exception {
    String[] words = info.split(" ");
    Path file = words.length > 1 ? folder.resolve(words[1]) : null;
    switch (words[0]) {
      case "pband", "csv" -> {
        String before = Files.exists(file) ? Files.readString(file) + "\n" : "";
        Files.writeString(file, before + body);
      }
      case "diff" -> edit(file, body);
      case "text", "transcribe" -> {
        if (Boolean.getBoolean("golden.write")) {
          written = written.replace("```text\n" + body + "```", "```text\n" + printed + "```");
        } else {
          assertEquals(body, printed, "after " + done);
        }
      }
      case "" -> assertTrue(body.contains("laboratory"), body); // a file for --particulars
      default -> throw new AssertionError("nobody knows what to do with ```" + info);
    }
  }

  /** Lines that begin with a minus go, with a plus come; the others stand there. */
  private static void edit(Path file, String body) throws IOException {
    StringBuilder was = new StringBuilder();
    StringBuilder now = new StringBuilder();
    for (String line : body.split("\n")) {
      String text = line.substring(1) + "\n";
      if (line.charAt(0) != '+') {
        was.append(text);
      }
      if (line.charAt(0) != '-') {
        now.append(text);
      }
    }
    String text = Files.readString(file);
    assertEquals(2, text.split(Pattern.quote(was.toString()), -1).length, "once: " + was);
    Files.writeString(file, text.replace(was.toString(), now.toString()));
  }

  private void type(String line) throws Exception {
    Path said = work.resolve("said.txt");
    ProcessBuilder shell =
        new ProcessBuilder("bash", "-c", line)
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .redirectOutput(said.toFile());
    shell.environment().merge("PATH", work.resolve("bin").toString(), (p, own) -> own + ":" + p);
    for (String who : List.of("AUTHOR", "COMMITTER")) {
      shell.environment().put("GIT_" + who + "_NAME", "A. Ward");
      shell.environment().put("GIT_" + who + "_EMAIL", "a.ward@example.invalid");
    }
    Process process = shell.start();
    assertTrue(process.waitFor(60, TimeUnit.SECONDS), line);
    printed = Files.readString(said).replace("(not packaged)", version());
    int status = line.startsWith("passband diff ") ? 1 : 0; // they differ
    assertEquals(status, process.exitValue(), line + "\n" + printed);
    done.add(line);
    if (line.startsWith("cd ")) {
      folder = folder.resolve(line.substring(3));
    }
    if (line.startsWith("passband readings ")) {
      fillIn();
    }
    int hint = printed.indexOf(HINT);
    if (hint >= 0) {
      Path source = folder.resolve("sallow.pband");
      String behind = printed.substring(hint + HINT.length(), printed.indexOf('\n', hint));
      Files.writeString(
          source,
          Files.readString(source).replaceFirst("(revision .* on [0-9-]+)", "$1 " + behind));
    }
  }

  /** The tests run from classes, which do not know it; the jar does. */
  private static String version() {
    Matcher version =
        Pattern.compile("<artifactId>passband</artifactId>\\s*<version>(.*?)</version>")
            .matcher(Repository.text(Repository.ROOT.resolve("pom.xml")));
    assertTrue(version.find());
    return version.group(1);
  }

  /** What a technician writes into the table: every reading in the middle of its limits. */
  private void fillIn() throws Exception {
    Path limits = folder.resolve("out/sallow-output/limits.json");
    String table = Files.readString(folder.resolve("readings.csv"));
    String full = Records.of(LimitsReader.read(Files.readString(limits)), false).csv();
    full.lines()
        .skip(1)
        .forEach(row -> assertTrue(table.contains(row.substring(0, row.indexOf(','))), row));
    Files.writeString(folder.resolve("readings.csv"), full);
  }
}
