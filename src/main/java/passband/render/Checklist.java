package passband.render;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Collection;
import java.util.HashMap;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import passband.draw.Drawing;
import passband.draw.PageDrawings;
import passband.draw.Svg;
import passband.plan.Plan;
import passband.source.Sha256;
import passband.words.Language;

/**
 * {@code checklist.html}: the technician's sheet, one self-contained file. It is a printable sheet
 * without its script, and can be filled in with it. The content-security policy lets in the one
 * style and the one script of the file by their hashes, and nothing else.
 */
public final class Checklist {
  private static final String STYLE = Svg.STYLE + resource("page.css");

  /**
   * An attribute whose value may stand without quotes; brackets stand at the ends of tags alone.
   */
  private static final Pattern QUOTED =
      Pattern.compile(" ([a-z-]+)=\"([^\\s\"'=<>`&]+)\"(?=(?: [^<>]*)?>)");

  private static final Pattern EMPTY_LINES = Pattern.compile("\n{2,}");

  private Checklist() {}

  /** Sets up what makes the file, which takes about as long as to check a procedure. */
  public static void ready() {
    Templates.ready();
  }

  /** The whole file. */
  public static String of(Plan plan) {
    return of(SheetMaker.sheet(plan));
  }

  /** The whole file of a sheet. */
  public static String of(Sheet sheet) {
    String style = STYLE + PageRules.of(sheet);
    Language language = sheet.head().language();
    PageCode.Script script = PageCode.of(sheet.items(), language);
    Map<String, Object> model = new HashMap<>();
    model.put("sheet", sheet);
    model.put("items", ScriptItems.of(sheet));
    model.put("style", style);
    model.put("styleHash", hash(style));
    model.put("script", script.text());
    model.put("scriptHash", script.hash());
    model.put("t", new Says(language));
    model.put("wiring", wiring(sheet));
    return plain(Templates.filled("checklist.ftlh", model));
  }

  /**
   * The page without the quotes and the empty lines that HTML does without, but for its scripts.
   */
  private static String plain(String page) {
    int from = page.indexOf("<body");
    int to = page.indexOf("<script", from);
    String body = QUOTED.matcher(page.substring(from, to)).replaceAll(" $1=$2");
    return page.substring(0, from)
        + EMPTY_LINES.matcher(body).replaceAll("\n").replace("&#39;", "'")
        + page.substring(to);
  }

  /**
   * How the page shows the wiring of a block.
   *
   * @param number of the run at which it is drawn; 0 where there is none
   * @param svg the drawing, each of them once; empty where it is drawn at a run before
   * @param at the number and the title of that run
   */
  public record Wiring(int number, String svg, String at) {
    static final Wiring NONE = new Wiring(0, "", "");
  }

  private static List<Wiring> wiring(Sheet sheet) {
    Map<String, Sheet.Block> drawn = new LinkedHashMap<>();
    for (Sheet.Block block : sheet.blocks()) {
      Sheet.SetupLines setup = setup(block);
      if (setup != null) {
        drawn.putIfAbsent(setup.name(), block);
      }
    }
    Iterator<String> drawings = drawings(drawn.values()).iterator();
    List<Wiring> all = new ArrayList<>();
    for (Sheet.Block block : sheet.blocks()) {
      Sheet.SetupLines setup = setup(block);
      Sheet.Block at = setup == null ? null : drawn.get(setup.name());
      all.add(
          at == null
              ? Wiring.NONE
              : new Wiring(
                  at.number(),
                  at == block ? drawings.next() : "",
                  at.number() + ". " + at.title()));
    }
    return all;
  }

  private static List<String> drawings(Collection<Sheet.Block> blocks) {
    List<Drawing> drawings = new ArrayList<>();
    List<String> ids = new ArrayList<>();
    for (Sheet.Block block : blocks) {
      Sheet.SetupLines setup = Objects.requireNonNull(setup(block), "a wiring without leads");
      drawings.add(Objects.requireNonNull(setup.drawing(), "a wiring that is never drawn"));
      ids.add("wiring-" + block.number());
    }
    return PageDrawings.of(drawings, ids);
  }

  private static Sheet.@Nullable SetupLines setup(Sheet.Block block) {
    return block.run() == null ? null : block.run().setup();
  }

  /** The SHA-256 of a text as a content-security policy wants it. */
  static String hash(String text) {
    return Base64.getEncoder().encodeToString(Sha256.of(text.getBytes(StandardCharsets.UTF_8)));
  }

  /** A file beside this class. */
  static String resource(String name) {
    try (InputStream in = Checklist.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What stands at the edges of a printed page; pages of an outlet carry its name. */
  private static final class PageRules {
    private static final String UNRELEASED =
        "@media screen{body:before{content:%;display:block;padding:2px 8px;margin-bottom:6px;"
            + "border:3px double;font-weight:700;text-align:center}}\n";

    private PageRules() {}

    static String of(Sheet sheet) {
      StringBuilder rules = new StringBuilder();
      Language language = sheet.head().language();
      String first =
          sheet.head().name() + " \u00b7 " + language.of("revision", sheet.head().revision());
      if (sheet.items().source().isUnreleased()) {
        String words = language.of("unreleased").toUpperCase(Locale.ROOT);
        first += " \u00b7 " + words;
        rules.append(UNRELEASED.replace("%", text(words)));
      }
      rules
          .append("@page{margin:17mm 11mm 15mm;")
          .append(corner("top-left", text(first + " \u00b7 " + sheet.head().shortDigest()), 9))
          .append(corner("bottom-left", text(language.of("authority")), 8))
          .append(corner("bottom-right", counted(language), 9))
          .append("}\n");
      String boxes = "\u2610\u00a0" + language.of("pass") + " \u2610\u00a0" + language.of("fails");
      rules.append(".verdict:not(.free):before{content:" + text(boxes) + "}\n");
      rules.append(":root{--row:" + text(language.of("again.line")) + "}\n");
      TreeSet<String> done = new TreeSet<>();
      for (Sheet.Block block : sheet.blocks()) {
        String page = block.run() == null ? null : block.run().page();
        String outlet = block.run() == null ? null : block.run().outlet();
        if (page != null && outlet != null && done.add(page)) {
          rules
              .append("@page " + page + "{")
              .append(corner("top-right", text(outlet), 13))
              .append("}\n." + page + "{page:" + page + "}\n");
        }
      }
      return rules.toString();
    }

    /** The words around the numbers of the page and of all pages. */
    private static String counted(Language language) {
      String[] around = language.of("page", "\n", "\n").split("\n", -1);
      return text(around[0])
          + "counter(page)"
          + text(around[1])
          + "counter(pages)"
          + text(around[2]);
    }

    private static String corner(String where, String content, int points) {
      return "@" + where + "{content:" + content + ";font:bold " + points + "pt Arial,sans-serif}";
    }

    /** A CSS string in which nothing but letters, digits and spaces stands for itself. */
    private static String text(String value) {
      StringBuilder css = new StringBuilder("\"");
      int c;
      for (int i = 0; i < value.length(); i += Character.charCount(c)) {
        c = value.codePointAt(i);
        if (c == ' ' || c < 128 && Character.isLetterOrDigit(c)) {
          css.appendCodePoint(c);
        } else {
          css.append('\\').append(Integer.toHexString(c)).append(' ');
        }
      }
      return css.append('"').toString();
    }
  }
}
