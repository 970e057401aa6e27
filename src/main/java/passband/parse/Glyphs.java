package passband.parse;

import java.util.ArrayList;
import java.util.List;
import java.util.StringTokenizer;
import java.util.TreeSet;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.source.Span;

/**
 * {@code glyph-missing}, a warning: the PDF's type has no letter for a character, which prints as
 * an empty box. The characters that it has are a table, since no check opens a font.
 */
final class Glyphs {
  /** All below are in the type. */
  private static final int FIRST = 0x180;

  /** In a holder of its own: no text needs it that is Latin alone. */
  private static final class Table {
    /** What both the plain and the bold DejaVu Sans Condensed 2.37 have, from {@code FIRST} on. */
    private static final String RANGES =
        """
        180-2e9 2ec-2ee 2f3 2f7 300-34f 351-353 357-358 35a 35c-362 370-377 37a-37f 384-38a
        38c 38e-3a1 3a3-525 531-556 559-55f 561-587 589-58a 5b0-5c3 5c6-5c7 5d0-5ea 5f0-5f4
        606-607 609-60a 60c 615 61b 61f 621-63a 640-655 657 65a 660-670 674 679-6bf 6c6-6c8
        6cb-6cc 6ce 6d0 6d5 6f0-6f9 7c0-7e7 7eb-7f5 7f8-7fa e3f e81-e82 e84 e87-e88 e8a e8d
        e94-e97 e99-e9f ea1-ea3 ea5 ea7 eaa-eab ead-eb9 ebb-ebd ec0-ec4 ec6 ec8-ecd ed0-ed9
        edc-edd 10a0-10c5 10d0-10fc 1401-1407 1409-141b 141d-1435 1437-144a 144c-1452
        1454-14bd 14c0-14ea 14ec-1507 1510-153e 1540-1550 1552-156a 1574-1585 158a-1596
        15a0-15af 15de 15e1 1646-1647 166e-1676 1680-169c 1d00-1d14 1d16-1d23 1d26-1d2e
        1d30-1d5b 1d5d-1d6a 1d77-1d78 1d7b 1d7d 1d85 1d9b-1dbf 1dc4-1dc9 1e00-1efb 1f00-1f15
        1f18-1f1d 1f20-1f45 1f48-1f4d 1f50-1f57 1f59 1f5b 1f5d 1f5f-1f7d 1f80-1fb4 1fb6-1fc4
        1fc6-1fd3 1fd6-1fdb 1fdd-1fef 1ff2-1ff4 1ff6-1ffe 2000-2064 206a-2071 2074-208e
        2090-209c 20a0-20b5 20b8-20ba 20bd 20d0-20d1 20d6-20d7 20db-20dc 20e1 2100-2109
        210b-2149 214b 214e 2150-2185 2189 2190-2311 2318-2319 231c-2321 2324-2328 232b-232c
        2373-2375 237a 237d 2387 2394 239b-23ae 23ce-23cf 23e3 23e5 23e8 2422-2423 2460-2469
        2500-269c 269e-26b8 26c0-26c3 26e2 2701-2704 2706-2709 270c-2727 2729-274b 274d
        274f-2752 2756 2758-275e 2761-2794 2798-27af 27b1-27be 27c5-27c6 27e0 27e6-27eb
        27f0-28ff 2906-2907 290a-290b 2940-2941 2983-2984 29ce-29d5 29eb 29fa-29fb 2a00-2a02
        2a0c-2a1c 2a2f 2a6a-2a6b 2a7d-2aa0 2aae-2aba 2af9-2afa 2b00-2b1a 2b1f-2b24 2b53-2b54
        2c60-2c77 2c79-2c7f 2d00-2d25 2d30-2d65 2d6f 2e18 2e1f 2e22-2e25 2e2e 4dc0-4dff
        a4d0-a4ff a644-a647 a64c-a64d a650-a651 a654-a657 a662-a66e a68a-a68d a694-a695
        a698-a699 a708-a716 a71b-a71f a722-a72b a730-a741 a746-a74b a74e-a753 a756-a757
        a764-a767 a780-a783 a789-a78e a790-a791 a7a0-a7aa a7f8-a7ff ef00-ef19 f400-f426
        f428-f441 f6c5 fb00-fb06 fb13-fb17 fb1d-fb36 fb38-fb3c fb3e fb40-fb41 fb43-fb44
        fb46-fb4f fb52-fba3 fbaa-fbad fbd3-fbdc fbde-fbdf fbe4-fbe9 fbfc-fbff fe00-fe0f
        fe20-fe23 fe70-fe74 fe76-fefc feff fff9-fffd 10300-1031e 10320-10323 1d300-1d356
        1d538-1d539 1d53b-1d53e 1d540-1d544 1d546 1d54a-1d550 1d552-1d56b 1d7d8-1d7e1
        1f030-1f093 1f0a0-1f0ae 1f0b1-1f0be 1f0c1-1f0cf 1f0d1-1f0df 1f311-1f318 1f42d-1f42e
        1f431 1f435 1f600-1f623 1f625-1f62b 1f62d-1f640 1f643
        """;

    private static final List<int[]> ALL = read();

    private static List<int[]> read() {
      List<int[]> all = new ArrayList<>();
      StringTokenizer ranges = new StringTokenizer(RANGES);
      while (ranges.hasMoreTokens()) {
        String range = ranges.nextToken();
        int hyphen = range.indexOf('-');
        int from = Integer.parseInt(hyphen < 0 ? range : range.substring(0, hyphen), 16);
        int to = hyphen < 0 ? from : Integer.parseInt(range.substring(hyphen + 1), 16);
        all.add(new int[] {from, to});
      }
      return all;
    }
  }

  private Glyphs() {}

  /** Whether the type has a character. */
  static boolean has(int character) {
    if (character < FIRST) {
      return true;
    }
    int low = 0;
    int high = Table.ALL.size() - 1;
    while (low <= high) {
      int middle = (low + high) / 2;
      int[] range = Table.ALL.get(middle);
      if (character < range[0]) {
        high = middle - 1;
      } else if (character > range[1]) {
        low = middle + 1;
      } else {
        return true;
      }
    }
    return false;
  }

  /** Says once where a text first has a character that prints as a box, and names all of them. */
  static void check(Span text, Diagnostics diagnostics) {
    String written = text.text();
    TreeSet<String> missing = new TreeSet<>();
    Span first = null;
    int c;
    for (int i = 0; i < written.length(); i += Character.charCount(c)) {
      c = written.codePointAt(i);
      if (!has(c)) {
        int at = text.start() + i;
        first = first == null ? new Span(text.file(), at, at + Character.charCount(c)) : first;
        missing.add(Character.toString(c));
      }
    }
    if (first != null) {
      diagnostics
          .say(
              Code.GLYPH_MISSING,
              first,
              "the PDF's type does not have %s: an empty box is printed for each",
              String.join(" ", missing))
          .hint("write it in other letters, or print checklist.html from a browser");
    }
  }
}
