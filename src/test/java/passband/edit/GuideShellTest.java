package passband.edit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import passband.evidence.LimitsReader;
import passband.testing.Records;
import passband.testing.Repository;
import passband.testing.TypedShell;

/**
 * The guide as its reader does it: what it shows is typed into files, its commands into a shell,
 * and what it says that they print is compared; {@code -Dgolden.write=true} writes that.
 */
class GuideShellTest {
  /** What is to be written as it stands. */
  private static final String HINT = "hint: write after the date: ";

  @TempDir Path work;
  private TypedShell shell;
  private Path folder;
  private String printed = "";
  private String written = "";
  private final List<String> done = new ArrayList<>();

  @Test
  void theGuideIsTypedAsItStands() throws Exception {
    folder = work;
    shell = new TypedShell(work);
    Path page = Repository.ROOT.resolve("src/docs/guide.md");
    String guide = Repository.text(page);
    written = guide;
    Matcher piece =
        TypedShell.PIECE.matcher(guide.substring(0, guide.indexOf("\n## The rest of the visit")));
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
    assertEquals(23, done.size(), done.toString());
    if (Boolean.getBoolean("golden.write")) {
      Files.writeString(page, written);
    }
    type("passband detect sallow.pband");
    type("passband check --released sallow.pband");
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
    TypedShell.Said said = shell.type(folder, line);
    printed = said.text();
    int status = line.startsWith("passband diff ") ? 1 : 0; // they differ
    assertEquals(status, said.status(), line + "\n" + printed);
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
