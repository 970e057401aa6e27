package passband.printed;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/**
 * What stands on the pages of a PDF, as an eye sees it: pieces of text with their places, nothing
 * of the document's structure.
 */
final class PrintedText {
  /** Characters farther apart than this many of their own heights belong to two pieces. */
  private static final float GAP = 0.45f;

  private PrintedText() {}

  /**
   * A run of characters without a wide gap.
   *
   * @param page from 1
   * @param x its left edge in points
   * @param y its baseline in points from the top of the page
   * @param size the type's size in points
   * @param words its words with their left edges
   */
  record Piece(int page, float x, float y, float size, String text, List<Word> words) {}

  /** A word and its left edge in points. */
  record Word(float x, String text) {}

  /** All pieces, page by page, from top to bottom and from left to right. */
  static List<Piece> of(byte[] pdf) {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      Collector collector = new Collector();
      collector.getText(document);
      return collector.pieces();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private record Glyph(int page, TextPosition at) {}

  private static final class Collector extends PDFTextStripper {
    private final List<Glyph> glyphs = new ArrayList<>();

    @Override
    protected void processTextPosition(TextPosition text) {
      glyphs.add(new Glyph(getCurrentPageNo(), text));
    }

    List<Piece> pieces() {
      glyphs.sort(
          Comparator.comparingInt(Glyph::page)
              .thenComparing(g -> Math.round(g.at.getY()))
              .thenComparing(g -> g.at.getX()));
      List<Piece> pieces = new ArrayList<>();
      List<Glyph> run = new ArrayList<>();
      for (Glyph glyph : glyphs) {
        if (!run.isEmpty() && !continues(run.get(run.size() - 1), glyph)) {
          addPiece(run, pieces);
          run.clear();
        }
        run.add(glyph);
      }
      addPiece(run, pieces);
      return pieces;
    }

    private static void addPiece(List<Glyph> run, List<Piece> pieces) {
      List<Word> words = words(run);
      if (words.isEmpty()) {
        return;
      }
      TextPosition first = run.get(0).at;
      String text = words.stream().map(Word::text).collect(Collectors.joining(" "));
      pieces.add(
          new Piece(
              run.get(0).page,
              words.get(0).x,
              first.getY(),
              Math.round(first.getYScale() * 10) / 10f,
              text,
              words));
    }

    /** Split at spaces, and where a small gap stands for one. */
    private static List<Word> words(List<Glyph> run) {
      List<Word> words = new ArrayList<>();
      StringBuilder text = new StringBuilder();
      float start = 0;
      Glyph last = null;
      for (Glyph glyph : run) {
        boolean space = glyph.at.getUnicode().isBlank();
        boolean apart = last != null && gap(last, glyph) > 0.15f * glyph.at.getFontSizeInPt();
        if ((space || apart) && text.length() > 0) {
          words.add(new Word(start, text.toString()));
          text.setLength(0);
        }
        if (!space) {
          start = text.length() == 0 ? glyph.at.getX() : start;
          text.append(glyph.at.getUnicode());
        }
        last = glyph;
      }
      if (text.length() > 0) {
        words.add(new Word(start, text.toString()));
      }
      return words;
    }

    private static float gap(Glyph left, Glyph right) {
      return right.at.getX() - (left.at.getX() + left.at.getWidth());
    }

    private static boolean continues(Glyph last, Glyph next) {
      return last.page == next.page
          && Math.round(last.at.getY()) == Math.round(next.at.getY())
          && gap(last, next) < GAP * next.at.getFontSizeInPt();
    }
  }
}
