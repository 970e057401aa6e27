import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.commonmark.Extension;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.ext.heading.anchor.HeadingAnchorExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;

/** The documents as pages for a browser, since most desks show Markdown as plain text. */
final class Pages {
  private static final List<Extension> EXTENSIONS =
      List.of(TablesExtension.create(), HeadingAnchorExtension.create());

  private static final String STYLE =
      """
      body { font: 16px/1.5 sans-serif; max-width: 52rem; margin: 2rem auto; padding: 0 1rem; color: #1a1a1a; background: #fff }
      pre { background: #f3f3f3; padding: .75rem; overflow-x: auto } code { font: .9em monospace }
      table { border-collapse: collapse } th, td { border: 1px solid #999; padding: .25rem .5rem; text-align: left; vertical-align: top }
      img { max-width: 100%; border: 1px solid #ccc } blockquote { border-left: .3rem solid #b00020; margin: 0; padding: 0 1rem }
      """;

  /** The documents by their names in the repository, and their pages. */
  private static final Map<String, String> PAGES =
      Map.of(
          "README.md", "README.html",
          "src/docs/guide.md", "guide.html",
          "src/docs/reference.md", "reference.html");

  private final Path base;
  private final Path to;

  Pages(Path base, Path to) {
    this.base = base;
    this.to = to;
  }

  void write() throws IOException {
    Archive.copy(base.resolve("src/docs/pictures"), to.resolve("pictures"));
    for (Map.Entry<String, String> page : PAGES.entrySet()) {
      Path source = base.resolve(page.getKey());
      Node text = Parser.builder().extensions(EXTENSIONS).build().parse(Files.readString(source));
      text.accept(new Links(source.getParent()));
      String body = HtmlRenderer.builder().extensions(EXTENSIONS).build().render(text);
      Files.writeString(
          to.resolve(page.getValue()),
          "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>Passband: "
              + page.getValue().replace(".html", "")
              + "</title>\n<style>\n"
              + STYLE
              + "</style>\n</head>\n<body>\n"
              + body.replace("src=\"src/docs/pictures/", "src=\"pictures/")
              + "</body>\n</html>\n");
    }
  }

  /** Leads links to the pages; what is not carried becomes plain text. */
  private final class Links extends AbstractVisitor {
    private final Path folder;

    Links(Path folder) {
      this.folder = folder;
    }

    @Override
    public void visit(Link link) {
      visitChildren(link);
      String[] parts = link.getDestination().split("#", 2);
      if (parts[0].isEmpty() || parts[0].contains(":")) {
        return;
      }
      String file = base.relativize(folder.resolve(parts[0]).normalize()).toString();
      String page = PAGES.get(file.replace('\\', '/'));
      if (page != null) {
        link.setDestination(page + (parts.length > 1 ? "#" + parts[1] : ""));
        return;
      }
      for (Node child = link.getFirstChild(); child != null; child = link.getFirstChild()) {
        link.insertBefore(child);
      }
      link.unlink();
    }
  }
}
