package passband.testing;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Tables of readings as people and spreadsheets write them, good and bad, by what they show. */
public final class ReadingsFiles {
  private static final String HEAD = "point,reading,unit,phase,attempt,kind,digest\n";
  private static final String ROWS =
      "a/b,200.0,mA,,1,reading,11\na/c,\u00b5 \u03a9 \u2265,,,,record,11\n";
  private static final String PLAIN = HEAD + ROWS;

  private final Map<String, byte[]> files = new LinkedHashMap<>();

  private ReadingsFiles() {
    separators();
    encodings();
    headings();
    cells();
    rows();
  }

  /** The files by name. */
  public static Map<String, byte[]> all() {
    return new ReadingsFiles().files;
  }

  private void add(String name, String text) {
    files.put(name, text.getBytes(StandardCharsets.UTF_8));
  }

  private void separators() {
    add("commas", PLAIN);
    add("semicolons", PLAIN.replace(',', ';'));
    add("tabs", PLAIN.replace(',', '\t'));
    add("semicolons with commas in cells", HEAD.replace(',', ';') + "a/b;200,0;mA;;1;reading;11\n");
    add("commas with semicolons in cells", HEAD + "a/b,1; 2; 3,,,1,record,11\n");
    add("crlf", PLAIN.replace("\n", "\r\n"));
    add("cr", PLAIN.replace('\n', '\r'));
    add("no line end", PLAIN.stripTrailing());
    add("blank lines", "\n \n" + PLAIN.replace("\n", "\n\n") + ",,,,,,\n,,\n\t\n");
    add("blank line before semicolons", "\r\n" + PLAIN.replace(',', ';'));
    add("separator line of a spreadsheet", "sep=;\n" + PLAIN.replace(',', ';'));
    add("mixed", HEAD.replace(',', ';') + ROWS);
    add("spaces for commas", PLAIN.replace(',', ' '));
  }

  private void encodings() {
    add("utf-8 with a mark", "\ufeff" + PLAIN);
    add("utf-8 with two marks", "\ufeff\ufeff" + PLAIN);
    for (String name : List.of("UTF-16LE", "UTF-16BE")) {
      files.put(name, ("\ufeff" + PLAIN).getBytes(Charset.forName(name)));
      files.put(name + " without a mark", PLAIN.getBytes(Charset.forName(name)));
      files.put(
          name + " with tabs",
          ("\ufeff" + PLAIN.replace(',', '\t')).getBytes(Charset.forName(name)));
      byte[] whole = ("\ufeff" + PLAIN).getBytes(Charset.forName(name));
      files.put(name + " cut off", java.util.Arrays.copyOf(whole, whole.length - 1));
      files.put(
          name + " with half a character",
          ("\ufeff" + PLAIN.replace('\u00b5', '\ud800'))
              .replace("\ud800", "\ud83d")
              .getBytes(Charset.forName(name)));
    }
    files.put(
        "latin 1", PLAIN.replaceAll("[\u03a9\u2265]", "").getBytes(StandardCharsets.ISO_8859_1));
    files.put("utf-8 cut off", new byte[] {'p', (byte) 0xc2});
    files.put("overlong", new byte[] {'p', (byte) 0xc0, (byte) 0x80});
    files.put("surrogates in utf-8", new byte[] {'p', (byte) 0xed, (byte) 0xa0, (byte) 0x80});
    files.put("empty", new byte[0]);
    files.put("one byte", new byte[] {'p'});
    files.put("only a mark", new byte[] {(byte) 0xff, (byte) 0xfe});
    add("only blanks", " \n\t\n\u00a0\n");
  }

  private void headings() {
    add("heading alone", HEAD);
    add("least columns", "point,reading,unit\na/b,1,V\n");
    add("another order", "unit,digest,reading,point\nmA,11,200.0,a/b\n");
    add("quoted heading", "\"point\",\"reading\",\"unit\"\na/b,1,V\n");
    add("heading with blanks", " point , reading\u00a0,\tunit\na/b,1,V\n");
    for (String needed : List.of("point", "reading", "unit")) {
      add("without " + needed, PLAIN.replaceFirst(needed, "remark"));
    }
    for (String wrong :
        List.of(
            "Kind", "KIND", "kinds", "kidn", "attemt", "constructor", "__proto__", "k\u0131nd")) {
      add("column " + wrong, PLAIN.replaceFirst("kind", wrong));
    }
    for (String twice : List.of("point", "reading", "unit", "kind", "digest")) {
      add("twice " + twice, PLAIN.replaceFirst("phase", twice));
    }
    add("nameless column, blank", "point,reading,unit,,\na/b,1,V,,\n");
    add("nameless column with contents", "point,reading,unit,,\na/b,1,V,,x\n");
    add("no heading", ROWS);
    add(
        "every column",
        "place,title,setting,further_settings,load,limits,write,reading,unit,attempt,kind,phase,"
            + "point,digest,remark,procedure,revision\n"
            + "1. A,Current,30 W,polarity=normal,100 ohm,\"380 to 420 mA\",number,400,mA,1,reading,"
            + "found,a/b,11,\"said, \"\"so\"\"\",p,A\n");
  }

  private void cells() {
    add("quotes", HEAD + "a/b,\"1, \"\"2\"\"\n3\",,,1,record,11\nx/y,1,,,,,11\n");
    add("line breaks in cells", HEAD + "a/b,\"1\r\n2\r3\n4\",,,,record,11\nx/y,1,,,,guess,11\n");
    add("quote inside", HEAD + "a/b,5\" plug,,,1,record,11\n");
    add("blank before a quote", HEAD + "a/b, \"5\",,,1,record,11\n");
    add("text after a quote", HEAD + "a/b,\"5\"x,,,1,record,11\n");
    add("unclosed quote", HEAD + "a/b,\"5,,,1,record,11\nx/y,1,,,,,11\n");
    add("unclosed quote at the end", HEAD + "a/b,1,,,1,record,\"11");
    add(
        "apostrophes",
        HEAD + "a/b,'-x,,,1,record,11\na/c,''-x,,,1,record,11\na/d,'5,,,,record,11\n");
    add("apostrophe and blanks", HEAD + "a/b,' -x,,,1,record,11\na/c, '=x,,,1,record,11\n");
    add(
        "blanks of many kinds",
        HEAD + "\u00a0a/b\u2007,\u2003 1\u202f,\ufeffV\u3000,\u001c,,,11\n");
    add("line separators", HEAD + "a/b,x\u2028y\u0085z,,,,record,11\n");
    add("long cell", HEAD + "a/b,\"" + "x\"\"".repeat(50_000) + "\",,,,record,11\n");
  }

  private void rows() {
    add("too few cells", HEAD + ROWS + "a/d,1,V\n");
    add("too many cells", HEAD + ROWS + "a/d,1,V,,,,11,\n");
    add("decimal comma", HEAD + "a/b,200,0,mA,,1,reading,11\n");
    for (String kind : List.of("derived", "not-done", "tick", "choice", "guess", "Reading")) {
      add("kind " + kind, HEAD + "a/b,,,,1," + kind + ",11\n");
    }
    add("reading without a point", HEAD + ROWS + ",1,V,,,,11\n");
    add("row without a point or reading", HEAD + ROWS + ",,,,,,11\n");
    add("two digests", HEAD + ROWS + "a/d,1,V,,,,22\n");
    add("some without a digest", HEAD + ROWS + "a/d,1,V,,,,\n");
    add("none with a digest", PLAIN.replace(",11\n", ",\n"));
    List<String> many = new ArrayList<>();
    for (int i = 0; i < 2_000; i++) {
      many.add("a/" + i + "," + i + ",mA,,,,11\n");
    }
    add("many", HEAD + String.join("", many));
  }
}
