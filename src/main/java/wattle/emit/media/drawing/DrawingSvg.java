package wattle.emit.media.drawing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Set;
import java.util.stream.Collectors;
import wattle.emit.media.file.Mark;
import wattle.emit.media.picture.Face;
import wattle.emit.media.text.Escape;

/** Drawings as SVG 1.1, black on white; it stands by itself and prints as it looks. */
public final class DrawingSvg {
  private DrawingSvg() {}

  /** The whole document, with the mark of our files. */
  public static String document(Drawing drawing) {
    return Mark.markUp("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + element(drawing, "drawing", "", false));
  }

  /**
   * The element alone, for the body of a page.
   *
   * @param id begins the ids of all in it, and must be the only one of its kind on the page
   */
  public static String element(Drawing drawing, String id) {
    return element(drawing, id, id + "-", false);
  }

  /** The same with its spots, for a page that is pointed at: each bears the class {@code spot} and what it is of. */
  public static String pointable(Drawing drawing, String id) {
    return element(drawing, id, id + "-", true);
  }

  /** @param within begins the ids of places in the drawing, to which links in it lead; links to what it has not lead to the page */
  private static String element(Drawing drawing, String id, String within, boolean spots) {
    Set<String> targets = drawing.shapes().stream().filter(Shape.Target.class::isInstance).map(t -> ((Shape.Target) t).id())
        .collect(Collectors.toSet());
    StringBuilder out = new StringBuilder(4096);
    out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"").append(number(drawing.width()));
    out.append("\" height=\"").append(number(drawing.height())).append("\" viewBox=\"0 0 ");
    out.append(number(drawing.width())).append(' ').append(number(drawing.height()));
    // Of an image a reading program passes over what is in it, links too.
    String role = drawing.shapes().stream().anyMatch(Shape.Link.class::isInstance) ? "group" : "img";
    out.append("\" role=\"").append(role).append("\" aria-labelledby=\"").append(id).append("-title ").append(id).append("-words\"");
    out.append(" font-family=\"").append(Face.SANS_FAMILIES).append("\" stroke-linecap=\"butt\">\n");
    out.append("<title id=\"").append(id).append("-title\">").append(Escape.xml(drawing.title())).append("</title>\n");
    out.append("<desc id=\"").append(id).append("-words\">").append(Escape.xml(drawing.description()));
    out.append("</desc>\n");
    out.append("<rect width=\"100%\" height=\"100%\" fill=\"#ffffff\"/>\n");
    boolean wires = false;
    for (Shape shape : drawing.shapes().stream().filter(s -> !(s instanceof Shape.Spot)).toList()) {
      if (shape instanceof Shape.Wire != wires) {
        wires = !wires;
        out.append(wires ? "<g" + WireSvg.COMMON + ">\n" : "</g>\n");
      }
      if (shape instanceof Shape.Link link) {
        link(out, link, targets.contains(link.to()) ? within : "");
      } else if (shape instanceof Shape.Target target) {
        out.append("<g id=\"").append(Escape.xml(within + target.id())).append("\"/>\n");
      } else {
        shape(out, shape);
      }
    }
    out.append(wires ? "</g>\n" : "");
    if (spots) {
      // Over all else, so that they are met wherever a reader points.
      drawing.shapes().stream().filter(Shape.Spot.class::isInstance).forEach(s -> spot(out, (Shape.Spot) s));
    }
    return out.append("</svg>\n").toString();
  }

  private static void shape(StringBuilder out, Shape shape) {
    if (shape instanceof Shape.Line line) {
      out.append("<line").append(at("x1", line.x1())).append(at("y1", line.y1())).append(at("x2", line.x2()));
      out.append(at("y2", line.y2())).append(stroke(line.stroke())).append("/>\n");
    } else if (shape instanceof Shape.Box box) {
      out.append("<rect").append(at("x", box.x())).append(at("y", box.y())).append(at("width", box.width()));
      out.append(at("height", box.height())).append(box.corner() > 0 ? at("rx", box.corner()) : "");
      out.append(fill(box.fill())).append(stroke(box.stroke())).append("/>\n");
    } else if (shape instanceof Shape.Circle circle) {
      out.append("<circle").append(at("cx", circle.x())).append(at("cy", circle.y())).append(at("r", circle.radius()));
      out.append(fill(circle.fill())).append(stroke(circle.stroke())).append("/>\n");
    } else if (shape instanceof Shape.Curve curve) {
      out.append("<path d=\"M").append(number(curve.x1())).append(' ').append(number(curve.y1())).append(" Q");
      out.append(number(curve.controlX())).append(' ').append(number(curve.controlY())).append(' ');
      out.append(number(curve.x2())).append(' ').append(number(curve.y2())).append("\" fill=\"none\"");
      out.append(stroke(curve.stroke())).append("/>\n");
    } else if (shape instanceof Shape.Triangle t) {
      out.append("<polygon points=\"").append(number(t.x1())).append(',').append(number(t.y1())).append(' ');
      out.append(number(t.x2())).append(',').append(number(t.y2())).append(' ').append(number(t.x3())).append(',');
      out.append(number(t.y3())).append("\" fill=\"#000000\"/>\n");
    } else if (shape instanceof Shape.Area area) {
      out.append("<polygon points=\"");
      out.append(String.join(" ", area.corners().stream().map(c -> number(c.x()) + "," + number(c.y())).toList()));
      out.append("\" fill=\"#e6e6e6\"/>\n");
    } else if (shape instanceof Shape.Wire wire) {
      WireSvg.write(out, wire);
    } else if (shape instanceof Shape.Text text) {
      text(out, text);
    } else {
      throw new AssertionError(shape);
    }
  }

  private static void link(StringBuilder out, Shape.Link link, String within) {
    out.append("<a href=\"#").append(Escape.xml(within + link.to()));
    out.append("\" aria-label=\"").append(Escape.xml(link.words())).append("\"><rect").append(at("x", link.x())).append(at("y", link.y()));
    out.append(at("width", link.width())).append(at("height", link.height()));
    out.append(" fill=\"none\" pointer-events=\"all\"/></a>\n");
  }

  private static void spot(StringBuilder out, Shape.Spot spot) {
    out.append("<rect class=\"spot\" data-thing=\"").append(Escape.xml(spot.thing())).append('"').append(at("x", spot.x()));
    out.append(at("y", spot.y())).append(at("width", spot.width())).append(at("height", spot.height()));
    out.append(" fill=\"none\" pointer-events=\"all\"/>\n");
  }

  private static void text(StringBuilder out, Shape.Text text) {
    out.append("<text").append(at("x", text.x())).append(at("y", text.y())).append(at("font-size", text.size()));
    out.append(text.bold() ? " font-weight=\"bold\"" : "");
    out.append(switch (text.anchor()) {
      case START -> "";
      case MIDDLE -> " text-anchor=\"middle\"";
      case END -> " text-anchor=\"end\"";
    });
    out.append('>').append(text.whole().isEmpty() ? "" : "<title>" + Escape.xml(text.whole()) + "</title>");
    out.append(Escape.xml(text.text())).append("</text>\n");
  }

  private static String stroke(Shape.Stroke stroke) {
    String dashes = stroke.dashes().isEmpty() ? "" : " stroke-dasharray=\"" + stroke.dashes() + "\"";
    return " stroke=\"" + (stroke == Shape.Stroke.FAINT ? "#8c8c8c" : "#000000") + "\"" + at("stroke-width", stroke.width()) + dashes;
  }

  private static String fill(Shape.Fill fill) {
    return " fill=\"" + switch (fill) {
      case NONE -> "none";
      case INK -> "#000000";
      case PAPER -> "#ffffff";
      case SHADE -> "#e6e6e6";
      case BRASS -> "#dfae4e";
      case DARK -> "#5f4a2b";
      case SILVER -> "#d5d9dd";
      case GREEN -> "#3f9a52";
      case ADDED -> "#d5ecd4";
      case REMOVED -> "#f7d9d6";
      case CHANGED -> "#fff1c9";
      case ALARM -> "#d43a2f";
    } + "\"";
  }

  private static String at(String name, double value) {
    return " " + name + "=\"" + number(value) + "\"";
  }

  static String number(double value) {
    return BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP).stripTrailingZeros().toPlainString();
  }
}
