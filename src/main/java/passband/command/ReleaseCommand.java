package passband.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import passband.build.Compilation;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.library.Paths;
import passband.library.ReleaseEntry;
import passband.library.Released;
import passband.library.UsageException;
import passband.plan.Plan;

/** {@code passband release}: adds what the procedures mean now to the record beside them. */
final class ReleaseCommand implements Verb {
  private final Invocation invocation;

  ReleaseCommand(Invocation invocation) {
    this.invocation = invocation;
  }

  @Override
  public int run(Arguments arguments) throws UsageException, IOException {
    String withdrawn = arguments.valueOrNull("--withdraw");
    Map<Path, RecordFile> records = new TreeMap<>();
    ReleaseEntry.Approval approval = approval(arguments);
    if (withdrawn != null) {
      withdraw(withdrawn, arguments, approval, records);
    } else if (!release(arguments, approval, records)) {
      invocation.err().println("nothing was released");
      return ExitStatus.FAULTS;
    }
    for (RecordFile record : records.values()) {
      record.write();
    }
    records.values().forEach(record -> record.said().forEach(invocation.out()::println));
    return ExitStatus.FINE;
  }

  private static ReleaseEntry.Approval approval(Arguments arguments) throws UsageException {
    String by = arguments.valueOrNull("--by");
    String on = arguments.valueOrNull("--on");
    if (by == null || on == null) {
      throw new UsageException(
          "say who approved it and when: --by \"NAME\" --on DATE (as 2026-01-31)");
    }
    boolean plain = by.codePoints().noneMatch(c -> c == '"' || Character.isISOControl(c));
    if (!plain || by.isBlank()) {
      throw new UsageException(
          "--by must be a name in one line and without quotes, not '" + by + "'");
    }
    return new ReleaseEntry.Approval(by.strip(), on, List.of());
  }

  private void withdraw(
      String procedure,
      Arguments arguments,
      ReleaseEntry.Approval approval,
      Map<Path, RecordFile> records)
      throws UsageException, IOException {
    for (String operand : arguments.operands()) {
      Path path = invocation.workingDirectory().resolve(operand).normalize();
      Path folder = Files.isDirectory(path) ? path : Paths.folder(path);
      Path file = folder.resolve(Released.NAME);
      RecordFile record = Files.exists(file) ? new RecordFile(file) : null;
      ReleaseEntry last = record == null ? null : record.released().last(procedure);
      if (record == null || last == null || last.withdrawn()) {
        throw new UsageException(
            "'" + procedure + "' is not released in " + operand + ": it cannot be withdrawn");
      }
      if (record.broken()) {
        throw new UsageException(file + " has errors: 'passband check " + operand + "' says which");
      }
      record.add(withdrawal(procedure, approval, last));
      records.put(file, record);
    }
  }

  private static ReleaseEntry withdrawal(
      String procedure, ReleaseEntry.Approval approval, ReleaseEntry last) {
    return new ReleaseEntry(procedure, "", "", "", 0, approval, last.span());
  }

  /** Whether there was nothing against it. */
  private boolean release(
      Arguments arguments, ReleaseEntry.Approval approval, Map<Path, RecordFile> records)
      throws UsageException, IOException {
    Compilation<Plan> compilation =
        Compilation.of(
            arguments.operands(),
            invocation.workingDirectory(),
            arguments.valueOrNull("--root"),
            null);
    Diagnostics found = compilation.diagnostics();
    DiagnosticPrinter.print(found, "text", invocation);
    found.removeIf(one -> one.code() == Code.RECORD_FORK); // what is added follows both branches
    if (found.hasErrors()) {
      return false;
    }
    if (compilation.procedures().isEmpty()) {
      throw new UsageException(
          "there is no procedure in " + String.join(", ", arguments.operands()));
    }
    List<String> refused = new ArrayList<>();
    for (Plan plan : compilation.procedures()) {
      Path source = invocation.workingDirectory().resolve(plan.name().span().file().path());
      Path file = source.resolveSibling(Released.NAME).normalize();
      if (!records.containsKey(file)) {
        records.put(file, new RecordFile(file));
      }
      String against = records.get(file).release(plan, approval);
      if (against != null) {
        refused.add(plan.name().text() + ": " + against);
      }
    }
    refused.forEach(invocation.err()::println);
    return refused.isEmpty();
  }
}
