package passband.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.library.UsageException;
import passband.transcribe.TableFault;
import passband.transcribe.Transcript;
import passband.transcribe.TranscriptJson;

/** {@code passband transcribe}: a draft from a manual's table. */
final class TranscribeCommand implements Verb {
  private static final int LONGEST = 1 << 22;

  private final Invocation invocation;

  TranscribeCommand(Invocation invocation) {
    this.invocation = invocation;
  }

  @Override
  public int run(Arguments arguments) throws UsageException, IOException {
    String given = arguments.operands().get(0);
    Path file = RecordedFiles.file(invocation.workingDirectory(), given);
    if (Files.size(file) > LONGEST) {
      throw new UsageException(given + " is too long for a manual's table");
    }
    String title = String.valueOf(file.getFileName()).replaceFirst("\\.[A-Za-z]+$", "");
    @Nullable String date = arguments.valueOrNull("--date");
    Transcript transcript;
    try {
      transcript =
          Transcript.of(
              Files.readAllBytes(file),
              arguments.value("--decimal").equals("comma"),
              title,
              title,
              date == null ? LocalDate.now().toString() : date);
    } catch (TableFault e) {
      throw new UsageException(given + ": " + e.getMessage());
    }
    String out = arguments.value("--out");
    String name = title + ".pband";
    NewFiles.write(
        invocation.workingDirectory().resolve(out), out, Map.of(name, transcript.source()));
    String written = NewFiles.shown(out, name);
    if (arguments.value("--as").equals("json")) {
      invocation.out().print(TranscriptJson.of(transcript, given, written));
    } else {
      invocation.out().print(transcript.text());
      invocation.out().println("written: " + written);
    }
    return ExitStatus.FINE;
  }
}
