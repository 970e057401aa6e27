package passband.pdf;

import java.util.List;
import passband.draw.Drawing;
import passband.render.Sheet;

/** The last pages: what to do when a reading fails, the result, and what the reviewer sees. */
final class BackParts {
  private final Sheet sheet;
  private final PartWriter write;

  BackParts(Sheet sheet, PartWriter write) {
    this.sheet = sheet;
    this.write = write;
  }

  void add() {
    write.section("Sect:end");
    write.label("");
    write.heading("If a reading fails");
    write.note(
        "Stop. Output off. Check the lead, the jack and the load, and take the reading once more;"
            + " of a value that is calculated, all its readings. Keep both. If it fails again, tag the"
            + " generator out of service and follow the maker\u2019s service manual.");
    List<String> blank = List.of("", "", "", "");
    write.table(
        write.shares(0.1, 0.25, 0.25, 0.4),
        List.of("Line", "First reading", "Second reading", "What was checked"),
        List.of(blank, blank, blank));
    write.small("If you stop here");
    write.note(
        "Turn the output off, leave the state as described above and disconnect the leads, at the"
            + " generator first. Tick \u201cnot done\u201d on every remaining line: a line without a"
            + " reading is not a pass.");
    write.heading("Result");
    write.ask("result-" + write.next(), PartWriter.ALONE, sheet.result());
    write.table(
        write.shares(0.18, 0.3, 0.32, 0.2),
        List.of("Who", "Name", "Signature", "Date"),
        List.of(List.of("Done by", "", "", ""), List.of("Reviewed by", "", "", "")));
    reviewer();
  }

  private void reviewer() {
    if (sheet.allowed().isEmpty() && sheet.unknown().isEmpty() && sheet.pictures().isEmpty()) {
      return;
    }
    write.section("Sect:reviewer");
    write.heading("For the reviewer");
    if (!sheet.allowed().isEmpty()) {
      write.small("Suppressed warnings");
      write.note(
          "The compiler reported these warnings; the procedure\u2019s source suppresses them for the"
              + " reasons given.");
      write.table(
          write.shares(0.32, 0.2, 0.48),
          List.of("Warning", "Where", "Reason"),
          sheet.allowed().stream()
              .map(a -> List.of(a.title() + " [" + a.code() + "]", a.place(), a.reason()))
              .toList());
    }
    if (!sheet.unknown().isEmpty()) {
      write.small("Unknown ratings");
      write.note("Nothing is checked that needs one of these ratings: nobody states them.");
      write.table(
          write.shares(0.2, 0.32, 0.48),
          List.of("Rating", "Where", "Why it is unknown"),
          sheet.unknown().stream().map(u -> List.of(u.rating(), u.place(), u.reason())).toList());
    }
    if (!sheet.pictures().isEmpty()) {
      write.small("Limit charts");
      for (int i = 0; i < sheet.pictures().size(); i += 2) {
        List<Drawing> two = sheet.pictures().subList(i, Math.min(i + 2, sheet.pictures().size()));
        write.add(new PicturesPart(write.path("Div:pictures"), two, write.inner()));
      }
    }
  }
}
