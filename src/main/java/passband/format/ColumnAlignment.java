package passband.format;

import static passband.parse.antlr.PassbandLexer.*;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.antlr.v4.runtime.Token;

/**
 * Statements that follow one another with their parts in columns: the first word of each, and in
 * lines of a kind the name, the printed name, the ends of a lead.
 */
final class ColumnAlignment {
  private static final int WIDEST_WORD = 10;

  private ColumnAlignment() {}

  private record Shape(String name, List<String> chunks) {}

  /** The text of each statement of a run. */
  static Map<LayoutLine, String> aligned(List<LayoutLine> run) {
    Map<LayoutLine, Shape> shapes = new IdentityHashMap<>();
    run.forEach(line -> shapes.put(line, shape(line)));
    Map<String, Integer> widths = new HashMap<>();
    for (Shape shape : shapes.values()) {
      for (int i = 0; i + 1 < shape.chunks().size(); i++) {
        int width = length(shape.chunks().get(i));
        if (i > 0 || width <= WIDEST_WORD) {
          widths.merge(key(shape, i), width, Math::max);
        }
      }
    }
    Map<LayoutLine, String> texts = new IdentityHashMap<>();
    shapes.forEach((line, shape) -> texts.put(line, text(shape, widths)));
    return texts;
  }

  private static String key(Shape shape, int chunk) {
    return chunk == 0 ? "lead" : shape.name() + chunk;
  }

  private static String text(Shape shape, Map<String, Integer> widths) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < shape.chunks().size(); i++) {
      String chunk = shape.chunks().get(i);
      text.append(chunk);
      if (i + 1 < shape.chunks().size()) {
        int width = widths.getOrDefault(key(shape, i), 0);
        text.append(" ".repeat(Math.max(0, width - length(chunk)) + 1));
      }
    }
    return text.toString();
  }

  static int length(String text) {
    return text.codePointCount(0, text.length());
  }

  private static Shape shape(LayoutLine line) {
    List<Token> words = line.words;
    List<Integer> cuts = new ArrayList<>();
    String name = "plain";
    if (words.size() > 1) {
      cuts.add(1);
    }
    if (words.size() > 2 && words.get(2).getType() == TEXT && isNamed(line.lead())) {
      cuts.add(2);
      name = "named";
      if (isLead(line.lead()) && words.size() > 4 && words.get(3).getType() == COMMA) {
        cuts.add(4);
      }
    } else if (isWire(words)) {
      name = "wire";
      cuts.add(2);
      cuts.add(indexOf(words, TO, 4));
    }
    return new Shape(name, chunks(words, cuts));
  }

  private static boolean isNamed(int lead) {
    return switch (lead) {
      case POLE, CONTACT, JACK, KEY, LEAD, LINK, ACTION, CAUTION, RECORD -> true;
      default -> false;
    };
  }

  private static boolean isLead(int lead) {
    return lead == LEAD || lead == LINK;
  }

  private static boolean isWire(List<Token> words) {
    int lead = words.get(0).getType();
    return (lead == CONNECT || lead == LINK)
        && words.size() > 4
        && words.get(2).getType() == FROM
        && indexOf(words, TO, 4) > 0;
  }

  private static int indexOf(List<Token> words, int type, int from) {
    for (int i = from; i < words.size(); i++) {
      if (words.get(i).getType() == type) {
        return i;
      }
    }
    return -1;
  }

  private static List<String> chunks(List<Token> words, List<Integer> cuts) {
    List<Spacing.Piece> pieces = Spacing.pieces(words);
    List<String> chunks = new ArrayList<>();
    int from = 0;
    for (int cut : cuts) {
      chunks.add(Spacing.joined(pieces.subList(from, cut)));
      from = cut;
    }
    chunks.add(Spacing.joined(pieces.subList(from, pieces.size())));
    return chunks;
  }
}
