package wattle.emit.media.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.xml.sax.InputSource;

/** What must hold for every drawing: no text over another or cut by a line, none off the sheet, none too small to read. */
public final class DrawingChecks {
  /** Points; the smallest type that drawing standards take for lettering on a letter or A4 sheet is about this. */
  private static final double SMALLEST = 8.5;

  /** Six points as printed, which is what sheets of any paper keep to. */
  private static final double SMALLEST_ON_SHEETS = 8 - 1e-6;

  private DrawingChecks() {}

  public static void check(Drawing drawing) {
    assertThat(faults(drawing)).as(drawing.title()).isEmpty();
  }

  /** The same for a sheet of paper. */
  public static void checkSheet(Drawing sheet) {
    assertThat(faults(sheet, SMALLEST_ON_SHEETS)).as(sheet.title()).isEmpty();
  }

  /** Every fault in words. */
  public static List<String> faults(Drawing drawing) {
    return faults(drawing, SMALLEST);
  }

  private static List<String> faults(Drawing drawing, double smallest) {
    List<String> faults = new ArrayList<>();
    Bounds sheet = new Bounds(0, 0, drawing.width(), drawing.height());
    List<Shape.Text> texts = drawing.shapes().stream().filter(Shape.Text.class::isInstance).map(Shape.Text.class::cast).toList();
    for (Shape shape : drawing.shapes()) {
      if (!sheet.contains(shape.bounds())) {
        faults.add("off the sheet: " + shape);
      }
    }
    List<Bounds> bounds = texts.stream().map(Shape::bounds).toList();
    for (int i = 0; i < texts.size(); i++) {
      Shape.Text text = texts.get(i);
      if (text.size() < smallest) {
        faults.add("too small: " + text);
      }
      for (int j = i + 1; j < texts.size(); j++) {
        if (bounds.get(i).overlaps(bounds.get(j))) {
          faults.add("texts overlap: " + text.text() + " | " + texts.get(j).text());
        }
      }
      Bounds inner = bounds.get(i).grown(-0.5);
      for (Shape shape : drawing.shapes()) {
        if (shape instanceof Shape.Line line && crosses(line, inner)) {
          faults.add("a line crosses: " + text.text() + " | " + line);
        } else if (shape instanceof Shape.Box box && edgeCrosses(box, inner)) {
          faults.add("an edge crosses: " + text.text() + " | " + box);
        } else if (shape instanceof Shape.Wire wire
            && wire.pieces().stream().anyMatch(p -> crosses(p, inner.grown(wire.insulation().width() / 2 - 0.5)))) {
          faults.add("a wire crosses: " + text.text() + " | " + wire);
        }
      }
    }
    return faults;
  }

  private static boolean edgeCrosses(Shape.Box box, Bounds text) {
    return box.bounds().overlaps(text) && !box.bounds().contains(text);
  }

  private static boolean crosses(Shape.Line line, Bounds box) {
    return new java.awt.geom.Line2D.Double(line.x1(), line.y1(), line.x2(), line.y2())
        .intersects(box.left(), box.top(), box.width(), box.height());
  }

  /** Parses SVG as XML; a fault in it is thrown. */
  public static org.w3c.dom.Document xml(String svg) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setNamespaceAware(true);
      factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
      return factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
    } catch (Exception e) {
      throw new AssertionError("not well-formed: " + e.getMessage(), e);
    }
  }
}
