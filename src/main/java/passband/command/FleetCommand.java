package passband.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.evidence.BadInput;
import passband.library.Paths;
import passband.library.UsageException;
import passband.record.Fleet;
import passband.record.RecordSummary;
import passband.record.SheetNames;
import passband.render.FleetReport;

/** {@code passband fleet}: the records of a department put together. */
final class FleetCommand implements Verb {
  private final Invocation invocation;

  FleetCommand(Invocation invocation) {
    this.invocation = invocation;
  }

  @Override
  public int run(Arguments arguments) throws UsageException, IOException {
    LocalDate date = day(arguments.valueOrNull("--date"));
    LocalDate today = date == null ? LocalDate.now() : date;
    long interval = Long.parseLong(arguments.value("--interval"));
    Fleet fleet = fleet(arguments.operands().get(0), interval, today);
    boolean sure = true;
    String instrument = arguments.valueOrNull("--instrument");
    String form = arguments.value("--as");
    LocalDate from = day(arguments.valueOrNull("--from"));
    LocalDate to = day(arguments.valueOrNull("--to"));
    if (instrument == null) {
      if (from != null || to != null) {
        throw new UsageException("--from and --to belong to --instrument");
      }
      invocation
          .out()
          .print(
              switch (form) {
                case "csv" -> FleetReport.csv(fleet, today);
                case "html" -> FleetReport.html(fleet, today);
                default -> FleetReport.text(fleet, today);
              });
    } else if (form.equals("html")) {
      throw new UsageException("--instrument is printed as text or csv");
    } else {
      if (from != null && to != null && from.isAfter(to)) {
        throw new UsageException("--from " + from + " is after --to " + to);
      }
      Fleet.Uses ever = fleet.using(instrument, null, null);
      if (ever.visits().isEmpty() && ever.doubtful().isEmpty()) {
        throw new UsageException(
            "no record names an instrument with the serial number '"
                + instrument
                + "' (they are: "
                + String.join(", ", fleet.instruments())
                + ")");
      }
      Fleet.Uses used = fleet.using(instrument, from, to);
      sure = used.doubtful().isEmpty();
      if (form.equals("csv")) {
        invocation.out().print(FleetReport.usesCsv(used.visits()));
        used.doubtful().forEach(one -> said("perhaps", one));
      } else {
        invocation.out().print(FleetReport.usesText(used));
      }
    }
    if (!form.equals("text") || instrument != null) {
      fleet.left().forEach(left -> said("left out", left));
    }
    if (instrument == null && form.equals("csv")) {
      fleet.doubts().forEach(doubt -> invocation.err().println("in doubt: " + doubt));
    }
    return sure && fleet.left().isEmpty() ? ExitStatus.FINE : ExitStatus.FAULTS;
  }

  private void said(String what, Fleet.LeftOut file) {
    invocation.err().println(what + ": " + file.file() + ": " + file.why());
  }

  private static @Nullable LocalDate day(@Nullable String text) {
    return text == null ? null : LocalDate.parse(text);
  }

  private Fleet fleet(String path, long interval, LocalDate today)
      throws UsageException, IOException {
    Path folder = invocation.workingDirectory().resolve(path);
    if (!Files.isDirectory(folder)) {
      throw new UsageException("there is no folder " + path);
    }
    List<Path> files = RecordedFiles.records(folder, path);
    SheetNames names = new SheetNames();
    List<Read> all = files.parallelStream().map(file -> read(folder, file, names)).toList();
    List<RecordSummary> records = new ArrayList<>();
    List<Fleet.LeftOut> left = new ArrayList<>();
    for (Read one : all) {
      if (one.record != null) {
        records.add(one.record);
      } else if (one.left != null) {
        left.add(one.left);
      }
    }
    return Fleet.of(records, left, interval, today);
  }

  /** A record, or why it is left out. */
  private record Read(@Nullable RecordSummary record, Fleet.@Nullable LeftOut left) {}

  private static Read read(Path folder, Path file, SheetNames names) {
    String name = Paths.of(folder.relativize(file));
    try {
      return new Read(RecordSummary.read(name, Files.readAllBytes(file), names), null);
    } catch (BadInput e) {
      return new Read(null, new Fleet.LeftOut(name, String.valueOf(e.getMessage())));
    } catch (IOException e) {
      return new Read(null, new Fleet.LeftOut(name, "it cannot be read"));
    }
  }
}
