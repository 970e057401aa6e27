package passband.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import passband.evidence.BadInput;
import passband.evidence.LimitsReader;
import passband.testing.Records;
import passband.testing.Repository;

/** What a command prints, into a file in place of the screen. */
class ToFileTest {
  private FileSystem disk;
  private Path work;
  private byte[] out;
  private String err;

  @BeforeEach
  void open() throws IOException {
    disk = Jimfs.newFileSystem(Configuration.unix());
    work = Files.createDirectories(disk.getPath("/bench"));
    Repository.copy(Repository.LIBRARY, work.resolve("procedures"));
  }

  @AfterEach
  void close() throws IOException {
    disk.close();
  }

  private int run(List<String> words) {
    Call call = Call.of(work, words.toArray(String[]::new));
    out = call.bytes();
    err = call.err();
    return call.status();
  }

  /** Every command that prints a report; with the same bytes, the same status, nothing printed. */
  @Test
  void theFileHoldsWhatWouldBePrinted() throws IOException, BadInput {
    assertEquals(0, run(List.of("build", "procedures", "--without", "pdf,xlsx")), err);
    String limits = "out/teasel-output/limits.json";
    String readings =
        Records.of(LimitsReader.read(Files.readString(work.resolve(limits))), false).csv();
    Files.writeString(work.resolve("2026-11-26.csv"), readings.replace("2026-11-27", "2026-11-26"));
    Files.writeString(work.resolve("2026-11-27.csv"), readings);
    Files.createDirectories(work.resolve("records"));
    assertEquals(0, run(List.of("record", limits, "2026-11-26.csv", "-o", "records/1.json")), err);
    Repository.copy(Repository.LIBRARY, work.resolve("new"));
    Path changed = work.resolve("new/teasel/teasel-output.pband");
    Files.writeString(changed, Files.readString(changed).replace("410 to 500", "420 to 490"));
    TreeSet<String> commands = new TreeSet<>();
    for (List<String> line :
        List.of(
            List.of("steps", "procedures"),
            List.of("detect", "procedures/sundew", "--as", "html"),
            List.of("diff", "procedures", "new"),
            List.of("readings", limits),
            List.of("judge", limits, "2026-11-26.csv", "--as", "html"),
            List.of("record", limits, "2026-11-26.csv"),
            List.of("verify", "records/1.json"),
            List.of("history", limits, "2026-11-26.csv", "2026-11-27.csv"),
            List.of("fleet", "records", "--date", "2026-11-28"),
            List.of("schema", "limits"),
            List.of("editor", "emacs"),
            List.of("completion", "fish"))) {
      commands.add(line.get(0));
      int status = run(line);
      byte[] printed = out;
      assertTrue(printed.length > 0, line + err);
      List<String> other = new ArrayList<>(line);
      other.addAll(List.of("--out", "made.txt"));
      assertEquals(status, run(other), line + err);
      assertEquals(0, out.length, line.toString());
      assertArrayEquals(printed, Files.readAllBytes(work.resolve("made.txt")), line.toString());
    }
    TreeSet<String> all = new TreeSet<>();
    CommandTable.listed().stream()
        .filter(c -> c.options().contains(CommandSpec.TO_FILE))
        .forEach(c -> all.add(c.name()));
    assertEquals(all, commands);
  }

  @Test
  void aCommandThatCannotRunLeavesTheFile() throws IOException {
    Files.writeString(work.resolve("made.txt"), "mine");
    assertEquals(2, run(List.of("steps", "nowhere", "--out", "made.txt")));
    assertEquals("mine", Files.readString(work.resolve("made.txt")));
    assertEquals(2, run(List.of("steps", "procedures", "--out", "no/such/folder.txt")));
    assertTrue(err.startsWith("passband: there is no "), err);
    assertFalse(err.contains("fault of Passband"), err);
  }
}
