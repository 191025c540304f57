package wattle.emit.media.drawing;

import java.util.List;

/**
 * What the signs of a view mean, and what must be said with it.
 *
 * @param items signs, which are set side by side
 * @param notes sentences, each on lines of its own
 */
public record Legend(List<Item> items, List<String> notes) {
  /** Of its smallest type, which stands in signs, in pixels. */
  public static final double SMALLEST = 9;

  private static final double SIZE = 9.5;

  private static final double LINE = 14;
  private static final double ITEM_LINE = 22;

  public Legend {
    items = List.copyOf(items);
    notes = List.copyOf(notes);
  }

  /**
   * A sign and its meaning.
   *
   * @param sign drawn to the right of the origin, its middle at height 0
   */
  public record Item(List<Shape> sign, double width, String words) {
    public Item {
      sign = List.copyOf(sign);
    }
  }

  /** How wide lines must be so that no sign's words are cut. */
  public double widestItem() {
    return items.stream().mapToDouble(i -> i.width + 6 + Fit.width(i.words, SIZE, false)).max().orElse(0);
  }

  /** Set in lines of a width, from the origin downwards. */
  public Sketch sketch(double width) {
    Sketch sketch = new Sketch();
    double x = 0;
    double y = 11;
    for (Item item : items) {
      double taken = item.width + 6 + Fit.width(item.words, SIZE, false);
      if (x > 0 && x + taken > width) {
        x = 0;
        y += ITEM_LINE;
      }
      double left = x;
      double middle = y;
      item.sign.forEach(s -> sketch.add(s.moved(left, middle)));
      sketch.fitted(x + item.width + 6, y + 3.4, item.words, SIZE, false, Shape.Anchor.START, width - item.width - 6);
      x += taken + 18;
    }
    y += items.isEmpty() ? 0 : 24;
    for (String note : notes) {
      for (String line : Fit.lines(note, SIZE, width)) {
        sketch.text(0, y, line, SIZE);
        y += LINE;
      }
    }
    return sketch;
  }
}
