package passband.edit;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Pattern;
import passband.parse.Keywords;
import passband.quantity.Units;

/** Files that make editors know the language, made from the language itself. */
public final class EditorFiles {
  /** Their names. */
  public static final List<String> NAMES =
      List.of("textmate", "language-configuration", "neovim", "emacs");

  private EditorFiles() {}

  /** The text of one. */
  public static String text(String name) {
    return switch (name) {
      case "textmate" -> textMate();
      case "language-configuration" -> languageConfiguration();
      case "neovim" -> NEOVIM;
      case "emacs" -> EMACS;
      default -> throw new IllegalArgumentException(name);
    };
  }

  /** Longer words first, so that none is taken for the beginning of another. */
  private static String oneOf(List<String> words) {
    List<String> sorted = new ArrayList<>(words);
    sorted.sort(Comparator.comparing(String::length).reversed().thenComparing(w -> w));
    return String.join("|", sorted.stream().map(Pattern::quote).map(EditorFiles::plain).toList());
  }

  /** What {@link Pattern#quote} quotes, in the regular expressions of editors. */
  private static String plain(String quoted) {
    return quoted
        .substring(2, quoted.length() - 2)
        .replaceAll("([.*+?^${}()|\\[\\]\\\\/])", "\\\\$1");
  }

  // ---- TextMate ----

  private static String textMate() {
    String edge = "(?<![\\p{L}\\p{Nd}.-])";
    String end = "(?![\\p{L}\\p{Nd}-])";
    return json(
        json -> {
          json.name("name").value("Passband");
          json.name("scopeName").value("source.passband");
          json.name("fileTypes").beginArray().value("pband").endArray();
          json.name("patterns").beginArray();
          pattern(json, "comment.line.number-sign.passband", "#.*$");
          json.beginObject();
          json.name("name").value("string.quoted.double.passband");
          json.name("begin").value("\"");
          json.name("end").value("\"|$");
          json.name("patterns").beginArray();
          pattern(json, "constant.character.escape.passband", "\\\\.");
          pattern(json, "variable.other.placeholder.passband", "\\{[^{}\"]*\\}");
          json.endArray();
          json.endObject();
          pattern(json, "constant.other.date.passband", edge + "\\d{4}-\\d{2}-\\d{2}" + end);
          json.beginObject();
          json.name("match")
              .value(
                  edge
                      + "(\\d+(?:\\.\\d+)?(?:[eE][+-]?\\d+)?)(?:[ \\t]*("
                      + oneOf(Units.symbols().stream().filter(u -> !u.isEmpty()).toList())
                      + ")"
                      + end
                      + ")?");
          json.name("captures").beginObject();
          json.name("1").beginObject().name("name").value("constant.numeric.passband").endObject();
          json.name("2")
              .beginObject()
              .name("name")
              .value("keyword.other.unit.passband")
              .endObject();
          json.endObject();
          json.endObject();
          pattern(
              json,
              "keyword.control.passband",
              edge + "(?:" + oneOf(List.copyOf(Keywords.all())) + ")" + end);
          pattern(json, "keyword.operator.passband", "[|=+*^%/]|(?<![\\p{L}\\p{Nd}])-");
          json.endArray();
        });
  }

  private static void pattern(JsonWriter json, String name, String match) throws IOException {
    json.beginObject().name("name").value(name).name("match").value(match).endObject();
  }

  private static String languageConfiguration() {
    return json(
        json -> {
          json.name("comments").beginObject().name("lineComment").value("#").endObject();
          for (String name : List.of("brackets", "autoClosingPairs")) {
            json.name(name).beginArray();
            for (String pair : List.of("{}", "()")) {
              json.beginArray().value(pair.substring(0, 1)).value(pair.substring(1)).endArray();
            }
            json.endArray();
          }
          json.name("wordPattern").value("[\\p{L}°][\\p{L}\\p{Nd}°-]*");
        });
  }

  private interface Members {
    void write(JsonWriter json) throws IOException;
  }

  private static String json(Members members) {
    StringWriter out = new StringWriter();
    try (JsonWriter json = new JsonWriter(out)) {
      json.setIndent("  ");
      json.setHtmlSafe(false);
      json.beginObject();
      members.write(json);
      json.endObject();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.append('\n').toString();
  }

  // ---- editors that speak the protocol themselves ----

  private static final String NEOVIM =
      """
      -- For Neovim: put this into your configuration; 'passband' has to be on the PATH.
      vim.api.nvim_create_autocmd({ "BufRead", "BufNewFile" }, {
        pattern = "*.pband",
        callback = function()
          vim.bo.filetype = "passband"
          vim.bo.commentstring = "# %s"
          local file = vim.api.nvim_buf_get_name(0)
          local folder = vim.fs.dirname(file)
          local found = vim.fs.find({ "passband.library", ".git" }, { path = folder, upward = true })[1]
          local root = found and vim.fs.dirname(found) or folder
          local client = vim.lsp.start_client({
            name = "passband",
            cmd = { "passband", "server" },
            root_dir = root,
            workspace_folders = { { uri = vim.uri_from_fname(root), name = "passband" } },
          })
          if client then
            vim.lsp.buf_attach_client(0, client)
          end
        end,
      })
      """;

  private static final String EMACS =
      """
      ;; For Emacs 29 or later, or 28 with the package eglot: put this into your configuration; 'passband' has to be on the PATH.
      (define-derived-mode passband-mode prog-mode "Passband"
        "For procedures in the Passband language."
        (setq-local comment-start "# "))
      (modify-syntax-entry ?# "<" passband-mode-syntax-table)
      (modify-syntax-entry ?\\n ">" passband-mode-syntax-table)
      (add-to-list 'auto-mode-alist '("\\\\.pband\\\\'" . passband-mode))
      (with-eval-after-load 'eglot
        (add-to-list 'eglot-server-programs '(passband-mode . ("passband" "server"))))
      (add-hook 'passband-mode-hook #'eglot-ensure)
      """;
}
