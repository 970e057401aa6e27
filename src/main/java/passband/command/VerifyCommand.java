package passband.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.evidence.BadInput;
import passband.evidence.Seal;
import passband.library.UsageException;
import passband.record.Alterations;
import passband.record.RecordReader;
import passband.record.VisitRecord;
import passband.render.RecordJson;
import passband.render.RecordPage;

/** {@code passband verify}: whether a record is what its parts come to. */
final class VerifyCommand implements Verb {
  private final Invocation invocation;

  VerifyCommand(Invocation invocation) {
    this.invocation = invocation;
  }

  @Override
  public int run(Arguments arguments) throws UsageException, IOException {
    String path = arguments.operands().get(0);
    byte[] bytes = new RecordedFiles(invocation.workingDirectory()).bytes(path);
    String text = new String(bytes, StandardCharsets.UTF_8);
    try {
      RecordReader read = RecordReader.read(text);
      VisitRecord record = read.record();
      List<String> wrong = new ArrayList<>(read.broken());
      if (record != null) {
        wrong.addAll(Alterations.between(text, RecordJson.of(record)));
      }
      String seal = arguments.valueOrNull("--seal");
      if (seal != null && !Seal.of(text).startsWith(seal)) {
        wrong.add("its seal is " + Seal.of(text) + ", not " + seal);
      }
      boolean page = arguments.value("--as").equals("html");
      if (page && record == null) {
        throw new UsageException(path + ": " + String.join("; ", wrong));
      }
      invocation
          .out()
          .print(
              record != null && page
                  ? RecordPage.of(record, Seal.of(text), wrong)
                  : text(path, record, wrong));
      return wrong.isEmpty() ? ExitStatus.FINE : ExitStatus.FAULTS;
    } catch (BadInput e) {
      throw new UsageException(path + ": " + e.getMessage());
    }
  }

  private static String text(String path, @Nullable VisitRecord record, List<String> wrong) {
    if (record != null && wrong.isEmpty()) {
      return path
          + ": unaltered; judged again from its parts: "
          + record.report().overall().word()
          + "\n";
    }
    StringBuilder out =
        new StringBuilder(
            path
                + ": altered"
                + (record != null && !record.program().equals(Version.text())
                    ? ", or judged differently by this version (it was made by "
                        + record.program()
                        + ", this is "
                        + Version.text()
                        + ")"
                    : "")
                + "\n");
    wrong.forEach(one -> out.append("  " + one + "\n"));
    return out.toString();
  }
}
