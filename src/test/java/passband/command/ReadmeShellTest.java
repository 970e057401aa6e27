package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import passband.evidence.ItemList;
import passband.evidence.LimitsReader;
import passband.testing.Records;
import passband.testing.Repository;
import passband.testing.TypedShell;

/**
 * The README as its reader does it: every block is typed, in order, and what it says that is
 * printed is compared; {@code -Dgolden.write=true} writes that. A block that nobody knows what to
 * do with fails it.
 */
class ReadmeShellTest {
  private static final Path PAGE = Repository.ROOT.resolve("README.md");

  @TempDir Path work;
  private TypedShell shell;
  private Path folder;
  private String page = "";
  private String printed = "";
  private final List<String> done = new ArrayList<>();

  @Test
  void everyBlockOfTheReadmeIsTyped() throws Exception {
    shell = new TypedShell(work);
    folder = Files.createDirectories(work.resolve("home"));
    Files.createSymbolicLink(folder.resolve("passband"), shell.passband());
    page = Repository.text(PAGE);
    String written = page;
    Matcher piece = TypedShell.PIECE.matcher(page);
    StringBuilder between = new StringBuilder();
    while (piece.find()) {
      piece.appendReplacement(between, "");
      if (piece.group("lines") != null) {
        for (String line : piece.group("lines").split("\n")) {
          type(line.strip());
        }
      } else if (piece.group("info").equals("text") && Boolean.getBoolean("golden.write")) {
        String block = piece.group();
        written = replacedAt(written, piece.start() + written.length() - page.length(), block);
      } else {
        block(piece.group("info"), piece.group("body"));
      }
    }
    piece.appendTail(between);
    List<String> left =
        between.toString().lines().filter(l -> l.startsWith("    ") || l.contains("```")).toList();
    assertEquals(List.of(), left, "blocks that this test does not see");
    assertTrue(done.containsAll(List.of("git", "difftool", "release", "judge", "history")));
    if (Boolean.getBoolean("golden.write")) {
      Files.writeString(PAGE, written);
    }
  }

  private String replacedAt(String text, int at, String block) {
    assertTrue(text.startsWith(block, at), block);
    return text.substring(0, at)
        + "```text\n"
        + printed
        + "```"
        + text.substring(at + block.length());
  }

  // ---- blocks between fences ----

  private void block(String info, String body) throws Exception {
    Path heath = folder.resolve("heath.pband");
    if (info.equals("text")) {
      assertEquals(body, printed, "after " + done);
    } else if (body.startsWith("heath.pband:")) {
      edited(told("Change the first row's `(\\d+)` to `(\\d+)`"), " ", " to ");
      assertEquals(body, said("./passband check heath.pband 2>/dev/null", 1));
      restore();
      said("./passband build heath.pband", 0);
    } else if (info.isEmpty() && body.matches("(?s)(device|analyzer|procedure) .*")) {
      String before = Files.exists(heath) ? Files.readString(heath) + "\n" : "";
      Files.writeString(heath, before + body);
    } else {
      throw new AssertionError("nobody knows what to do with ```" + info + "\n" + body);
    }
  }

  private String was = "";

  /** Two words of the prose, of which the first stands in the file and the second is to. */
  private Matcher told(String sentence) {
    Matcher told = Pattern.compile(sentence.replace(" ", "\\s+")).matcher(page);
    assertTrue(told.find(), sentence);
    return told;
  }

  private void edited(Matcher told, String before, String behind) throws IOException {
    was = Files.readString(folder.resolve("heath.pband"));
    String now = was.replace(before + told.group(1) + behind, before + told.group(2) + behind);
    assertNotEquals(was, now);
    Files.writeString(folder.resolve("heath.pband"), now);
  }

  private void restore() throws IOException {
    Files.writeString(folder.resolve("heath.pband"), was);
  }

  // ---- lines that are set in ----

  private void type(String line) throws Exception {
    String command = line.replaceFirst("\\s{2,}#.*", "");
    if (command.equals(".ci/run")) {
      assertTrue(Files.isExecutable(Repository.ROOT.resolve(command)), command);
    } else if (command.equals("./passband build procedures")) {
      demo();
      said(command, 0);
    } else if (line.contains("  # ")) {
      String listed = line.replace("./passband ", "").replaceAll("\\s+# ", " ");
      assertTrue(said("./passband help", 0).replaceAll(" +", " ").contains(listed), listed);
    } else if (command.startsWith("git config ")) {
      git();
      said(command.replace("/path/to/passband", shell.passband().toString()), 0);
      if (command.contains("textconv")) {
        edited(told("the `(\\d+ V)` above was changed to `(\\d+ V)`"), "at most ", "");
        assertTrue(said("git diff --no-ext-diff", 0).contains("\n+mode/tip"), printed);
        said("git diff", 0);
      }
    } else if (command.startsWith("/path/to/passband git-diff ")) {
      String diff = said("git diff", 0);
      said("git config difftool.passband.cmd '" + installed(command) + "'", 0);
      assertEquals(diff, said("git difftool -y -t passband", 0));
      restore();
      done.add("difftool");
    } else if (command.startsWith("./passband release PATH ")) {
      said(
          command
              .replace("PATH", "heath.pband")
              .replace("NAME", "A. Ward")
              .replace("DATE", "2026-11-03"),
          0);
      said("./passband check --released heath.pband", 0);
      said("./passband build heath.pband", 0);
      done.add("release");
    } else if (command.startsWith("./passband judge ")) {
      Files.writeString(folder.resolve("readings.csv"), Records.of(limits(), false).csv());
      assertTrue(said(command, 0).contains(": pass\n"), printed);
      done.add("judge");
    } else if (command.startsWith("./passband history ")) {
      history(command);
      done.add("history");
    } else {
      throw new AssertionError("nobody knows what to do with: " + line);
    }
  }

  private String installed(String command) {
    return command.replace("/path/to/passband", shell.passband().toString());
  }

  private String said(String line, int status) throws IOException, InterruptedException {
    TypedShell.Said said = shell.type(folder, line);
    printed = said.text();
    assertEquals(status, said.status(), line + "\n" + printed);
    return printed;
  }

  /** One generator of the demo library with all that may be used by it. */
  private void demo() throws IOException {
    Path library = Repository.ROOT.resolve("procedures");
    try (Stream<Path> all = Files.walk(library)) {
      for (Path one : all.filter(Files::isRegularFile).toList()) {
        Path name = library.relativize(one);
        boolean shared = name.getNameCount() == 1 || name.startsWith("analyzers");
        if (shared || name.startsWith("tussock-4")) {
          Path to = folder.resolve("procedures").resolve(name.toString());
          Files.createDirectories(to.getParent());
          Files.copy(one, to);
        }
      }
    }
  }

  /** A repository with the line of the prose in {@code .gitattributes}. */
  private void git() throws Exception {
    if (done.contains("git")) {
      return;
    }
    Matcher attributes = told("put `(.*?)` and `(.*?)` into `.gitattributes`");
    Files.writeString(
        folder.resolve(".gitattributes"), attributes.group(1) + "\n" + attributes.group(2) + "\n");
    said("git init -q . && git config user.name W && git config user.email w@example.invalid", 0);
    said("git add heath.pband .gitattributes && git commit -q -m Heath", 0);
    done.add("git");
  }

  private ItemList limits() throws Exception {
    return LimitsReader.read(Files.readString(folder.resolve("out/heath-output/limits.json")));
  }

  /** The readings that the prose names, in the files that the command names. */
  private void history(String command) throws Exception {
    Matcher told =
        told(
            "readings of (\\d+), (\\d+) and (\\d+) mA, and a year later of (\\d+), (\\d+) and (\\d+)");
    Matcher files = Pattern.compile("\\b([0-9-]+)\\.csv").matcher(command);
    for (int visit = 0; files.find(); visit++) {
      Records records =
          Records.of(limits(), false)
              .with("sheet/date", files.group(1) + ",,,1,record")
              .with("sheet/generator-serial", "H-0071,,,1,record");
      int next = 3 * visit + 1;
      for (String id : records.ids()) {
        if (id.endsWith("/current")) {
          records.with(id, Records.reading(told.group(next++), "mA"));
        }
      }
      Files.writeString(folder.resolve(files.group()), records.csv());
    }
    said(command, 1);
  }
}
