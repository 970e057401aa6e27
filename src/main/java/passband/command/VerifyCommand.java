package passband.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import passband.evidence.BadInput;
import passband.evidence.Seal;
import passband.library.Paths;
import passband.library.UsageException;
import passband.record.Alterations;
import passband.record.RecordReader;
import passband.record.VisitRecord;
import passband.render.RecordJson;
import passband.render.RecordPage;

/** {@code passband verify}: whether records are what their parts come to. */
final class VerifyCommand implements Verb {
  /** How much is said of each record of a folder. */
  private static final int SHOWN = 5;

  /** So much of a seal tells one record from another. */
  private static final int LEAST = 8;

  /** As many digits of a seal as stand at the foot of a printed page. */
  private static final int PRINTED = 16;

  private static final Pattern SEAL = Pattern.compile("[0-9a-f]{" + LEAST + ",64}");

  private final Invocation invocation;

  VerifyCommand(Invocation invocation) {
    this.invocation = invocation;
  }

  @Override
  public int run(Arguments arguments) throws UsageException, IOException {
    String path = arguments.operands().get(0);
    if (Files.isDirectory(invocation.workingDirectory().resolve(path))) {
      return folder(path, arguments);
    }
    byte[] bytes = new RecordedFiles(invocation.workingDirectory()).bytes(path);
    try {
      Verified verified = Verified.of(bytes, seal(arguments.valueOrNull("--seal")));
      boolean page = arguments.value("--as").equals("html");
      if (page && verified.record == null) {
        throw new UsageException(path + ": " + String.join("; ", verified.wrong));
      }
      invocation
          .out()
          .print(
              verified.record != null && page
                  ? RecordPage.of(verified.record, verified.seal, verified.wrong)
                  : verified.text(path, Integer.MAX_VALUE));
      return verified.status();
    } catch (BadInput e) {
      throw new UsageException(path + ": " + e.getMessage());
    }
  }

  /** As a seal is written; null where none was given. */
  private static @Nullable String seal(@Nullable String given) throws UsageException {
    if (given == null) {
      return null;
    }
    String seal = given.strip().toLowerCase(Locale.ROOT);
    if (!SEAL.matcher(seal).matches()) {
      throw new UsageException(
          "a seal is of the digits 0 to 9 and a to f, and of one at least the first "
              + LEAST
              + " are needed, not '"
              + given
              + "'");
    }
    return seal;
  }

  /** Every record below a folder, each named; the worst decides. */
  private int folder(String path, Arguments arguments) throws UsageException, IOException {
    if (arguments.valueOrNull("--seal") != null || arguments.value("--as").equals("html")) {
      throw new UsageException("--seal and --as html are for one record; " + path + " is a folder");
    }
    Path folder = invocation.workingDirectory().resolve(path);
    int unaltered = 0;
    int altered = 0;
    int none = 0;
    for (Path file : RecordedFiles.records(folder, path)) {
      String name = path + "/" + Paths.of(folder.relativize(file));
      try {
        Verified verified = Verified.of(Files.readAllBytes(file), null);
        unaltered += verified.wrong.isEmpty() ? 1 : 0;
        altered += verified.wrong.isEmpty() ? 0 : 1;
        invocation.out().print(verified.text(name, SHOWN));
      } catch (BadInput e) {
        none++;
        invocation.out().print(name + ": no record: " + e.getMessage() + "\n");
      } catch (IOException e) {
        none++;
        invocation.out().print(name + ": it cannot be read\n");
      }
    }
    invocation
        .out()
        .print(unaltered + " unaltered, " + altered + " altered, " + none + " no record\n");
    return none > 0 ? ExitStatus.CANNOT_RUN : altered > 0 ? ExitStatus.FAULTS : ExitStatus.FINE;
  }

  /**
   * What is found of a record.
   *
   * @param record null where its parts cannot be judged
   * @param wrong a sentence each; empty where nothing is
   */
  private record Verified(@Nullable VisitRecord record, String seal, List<String> wrong) {
    static Verified of(byte[] bytes, @Nullable String seal) throws BadInput {
      String text = new String(bytes, StandardCharsets.UTF_8);
      RecordReader read = RecordReader.read(text);
      List<String> wrong = new ArrayList<>(read.broken());
      if (read.record() != null) {
        wrong.addAll(Alterations.between(text, RecordJson.of(read.record())));
      }
      if (seal != null && !Seal.of(text).startsWith(seal)) {
        wrong.add("its seal is " + Seal.of(text) + ", not " + seal);
      }
      return new Verified(read.record(), Seal.of(text), wrong);
    }

    int status() {
      return wrong.isEmpty() ? ExitStatus.FINE : ExitStatus.FAULTS;
    }

    /** Of what is wrong so many at the most. */
    String text(String path, int most) {
      if (record != null && wrong.isEmpty()) {
        return path
            + ": unaltered; judged again from its parts: "
            + record.report().overall().word()
            + "; seal "
            + seal.substring(0, Math.min(PRINTED, seal.length()))
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
      wrong.stream().limit(most).forEach(one -> out.append("  " + one + "\n"));
      if (wrong.size() > most) {
        out.append("  and " + (wrong.size() - most) + " more: verify it alone\n");
      }
      return out.toString();
    }
  }
}
