package passband.edit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.parse.Marks;
import passband.source.SourceFile;
import passband.source.Span;
import passband.syntax.Adjust;
import passband.syntax.Gate;
import passband.syntax.Include;
import passband.syntax.SharedPart;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * One entry of a file's outline.
 *
 * @param kind what it is, in the words of the language
 * @param title its printed name; empty when it has none
 */
public record Outline(
    String kind, String name, String title, Span whole, Span at, List<Outline> inside) {

  /** The outline of a file. */
  public static List<Outline> of(Tree.File file) {
    Map<Integer, Integer> ends = ends(file.source());
    return heads(file).stream().map(entry -> entry.grown(ends)).toList();
  }

  /** Where the block ends that is opened on a line, by the line. */
  private static Map<Integer, Integer> ends(SourceFile source) {
    Map<Integer, Integer> ends = new HashMap<>();
    Marks.blocks(source).forEach(block -> ends.put(block.line(), block.end()));
    return ends;
  }

  /** With the whole block for its first line. */
  private Outline grown(Map<Integer, Integer> ends) {
    int line = whole.file().lineOf(whole.end());
    int end = Math.max(whole.end(), ends.getOrDefault(line, whole.end()));
    Span block = new Span(whole.file(), whole.start(), end);
    List<Outline> inner = inside.stream().map(entry -> entry.grown(ends)).toList();
    return new Outline(kind, name, title, block, at, inner);
  }

  private static List<Outline> heads(Tree.File file) {
    List<Outline> entries = new ArrayList<>();
    for (Tree.Declaration one : file.declarations()) {
      if (one instanceof Tree.Device d) {
        List<Outline> inside = new ArrayList<>();
        d.outlets().forEach(o -> inside.add(outlet(o)));
        d.modes().forEach(m -> add(inside, "mode", m.name(), m.title(), m.span()));
        d.states().forEach(s -> add(inside, "state", s.name(), s.title(), s.span()));
        entries.add(entry("device", d.name(), d.title(), d.span(), inside));
      } else if (one instanceof Tree.Analyzer a) {
        List<Outline> inside = new ArrayList<>();
        a.terminals().forEach(t -> add(inside, t.kind().word(), t.name(), t.title(), t.span()));
        a.measures().forEach(m -> add(inside, "measure", m.quantity(), null, m.span()));
        entries.add(entry("analyzer", a.name(), a.title(), a.span(), inside));
      } else if (one instanceof Tree.Leads l) {
        List<Outline> inside = new ArrayList<>();
        l.leads().forEach(x -> add(inside, x.kind().word(), x.name(), x.title(), x.span()));
        entries.add(entry("leads", l.name(), l.title(), l.span(), inside));
      } else if (one instanceof Tree.Rule r) {
        entries.add(entry("rule", r.name(), r.title(), r.span(), List.of()));
      } else if (one instanceof SharedPart part) {
        Tree.Procedure lines = part.lines();
        entries.add(entry("part", part.name(), null, lines.span(), parts(lines)));
      } else if (one instanceof Tree.Procedure p) {
        entries.add(entry("procedure", p.name(), p.title(), p.span(), parts(p)));
      }
    }
    return entries;
  }

  private static List<Outline> parts(Tree.Procedure p) {
    List<Outline> inside = new ArrayList<>();
    p.setups().forEach(s -> add(inside, "setup", s.name(), s.title(), s.span()));
    for (Tree.Part part : p.parts()) {
      if (part instanceof Tree.Section s) {
        add(inside, "section", s.name(), s.title(), s.span());
      } else if (part instanceof Gate g) {
        add(inside, "gate", g.name(), g.text(), g.span());
      } else if (part instanceof Include i) {
        add(inside, "include", i.name(), null, i.name().span());
      } else if (part instanceof Tree.Test t) {
        add(inside, "test", t.name(), t.title(), t.span());
      } else if (part instanceof Adjust a) {
        add(inside, "adjust", a.name(), a.title(), a.span());
      }
    }
    inside.sort(java.util.Comparator.comparing(Outline::at));
    return inside;
  }

  private static Outline outlet(Tree.Outlet o) {
    List<Outline> inside = new ArrayList<>();
    o.terminals().forEach(t -> add(inside, t.kind().word(), t.name(), t.title(), t.span()));
    return entry("outlet", o.name(), o.title(), o.span(), inside);
  }

  private static void add(
      List<Outline> to, String kind, Word name, @Nullable Word title, Span span) {
    to.add(entry(kind, name, title, span, List.of()));
  }

  private static Outline entry(
      String kind, Word name, @Nullable Word title, Span span, List<Outline> inside) {
    return new Outline(
        kind,
        name.text(),
        title == null ? "" : title.text(),
        span.holds(name.span()) ? span : name.span(),
        name.span(),
        inside);
  }
}
