package passband.pdf;

import java.util.ArrayList;
import java.util.List;

/**
 * A stretch of the sheet that stays whole where it fits a page: a run, and in it each mode with its
 * steps and lines. One that does not is broken between what it is made of, at last between parts.
 */
final class Stretch {
  /** So many lines of a table stay together at its beginning and at its end. */
  private static final int TOGETHER = 3;

  /** What it is made of; empty where that are parts. */
  private final List<Stretch> inside = new ArrayList<>();

  /** Parts that stay on one page; empty where it is made of others. */
  private final List<Part> parts;

  private final double ofParts;

  private boolean goesOn;

  /** One that is made of others. */
  Stretch() {
    this(List.of());
  }

  /** Parts that stay on one page. */
  Stretch(List<Part> parts) {
    this.parts = List.copyOf(parts);
    double sum = 0;
    for (Part part : parts) {
      sum += part.height();
    }
    this.ofParts = sum;
  }

  /** Adds one to what it is made of. */
  void add(Stretch inner) {
    inside.add(inner);
  }

  /** The height, in points. */
  double height() {
    double sum = ofParts;
    for (Stretch one : inside) {
      sum += one.height();
    }
    return sum;
  }

  /** Its parts, in order. */
  List<Part> parts() {
    List<Part> all = new ArrayList<>(parts);
    inside.forEach(one -> all.addAll(one.parts()));
    return all;
  }

  /** How many lines with readings it has. */
  int lines() {
    int lines = 0;
    for (Part part : parts()) {
      lines += part.isLine() ? 1 : 0;
    }
    return lines;
  }

  /** Whether a page should not begin with it: it is in the middle of a mode. */
  boolean goesOn() {
    return goesOn;
  }

  /** What is not broken where pages have this room, in order. */
  List<Stretch> whole(double room) {
    if (inside.isEmpty()) {
      return parts.isEmpty() ? List.of() : List.of(this);
    }
    if (height() <= room) {
      return List.of(new Stretch(parts()));
    }
    List<Stretch> whole = new ArrayList<>();
    for (Stretch one : inside) {
      whole.addAll(one.inside.isEmpty() ? one.whole(room) : one.lined(room));
    }
    return whole;
  }

  /** A table: its first lines with its head, and its last ones together. */
  private List<Stretch> lined(double room) {
    List<Stretch> pieces = new ArrayList<>();
    for (Stretch one : inside) {
      pieces.addAll(one.whole(room));
    }
    for (int i = 1; i < TOGETHER; i++) {
      if (pieces.size() > 1 && pieces.get(0).lines() > 0 && pieces.get(1).lines() > 0) {
        join(pieces, 0, room);
      }
    }
    for (int i = 1; i < TOGETHER; i++) {
      int last = pieces.size() - 1;
      if (last > 0 && pieces.get(last).lines() > 0 && pieces.get(last - 1).lines() > 0) {
        join(pieces, last - 1, room);
      }
    }
    for (int i = 1; i < pieces.size(); i++) {
      pieces.get(i).goesOn = true;
    }
    return pieces;
  }

  private static void join(List<Stretch> pieces, int at, double room) {
    List<Part> both = pieces.get(at).parts();
    both.addAll(pieces.get(at + 1).parts());
    Stretch joined = new Stretch(both);
    if (joined.height() <= room) {
      pieces.set(at, joined);
      pieces.remove(at + 1);
    }
  }
}
