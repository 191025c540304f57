package wattle.emit.media.page;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import wattle.emit.media.text.Escape;

/** Writes elements of a page; every text is escaped, every element closed. */
public final class Markup {
  private final StringBuilder out = new StringBuilder();
  private final Deque<String> open = new ArrayDeque<>();

  /** Opens an element, with attributes as pairs of name and value. */
  public Markup open(String tag, String... attributes) {
    start(tag, attributes);
    out.append('>');
    open.push(tag);
    return this;
  }

  /** Closes the element opened last. */
  public Markup close() {
    out.append("</").append(open.pop()).append(">\n");
    return this;
  }

  /** An element that holds a text. */
  public Markup element(String tag, String text, String... attributes) {
    return open(tag, attributes).text(text).close();
  }

  /** An element that holds nothing. */
  public Markup empty(String tag, String... attributes) {
    start(tag, attributes);
    out.append("/>\n");
    return this;
  }

  public Markup text(String text) {
    out.append(Escape.xml(text));
    return this;
  }

  /** What another writer has made, taken as it is. */
  public Markup raw(String markup) {
    out.append(markup);
    return this;
  }

  public Markup list(List<String> items, String... attributes) {
    open("ul", attributes);
    items.forEach(i -> element("li", i));
    return close();
  }

  /** One row of a table. */
  public Markup row(String cellTag, String... cells) {
    open("tr");
    for (String cell : cells) {
      if (cellTag.equals("th")) {
        element("th", cell, "scope", "col");
      } else {
        element(cellTag, cell);
      }
    }
    return close();
  }

  private void start(String tag, String... attributes) {
    out.append('<').append(tag);
    for (int i = 0; i < attributes.length; i += 2) {
      out.append(' ').append(attributes[i]).append("=\"").append(Escape.xml(attributes[i + 1])).append('"');
    }
  }

  /** @throws IllegalStateException if an element is still open */
  @Override
  public String toString() {
    if (!open.isEmpty()) {
      throw new IllegalStateException("still open: " + open);
    }
    return out.toString();
  }
}
