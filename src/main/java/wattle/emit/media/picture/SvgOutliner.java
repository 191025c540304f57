package wattle.emit.media.picture;

import java.awt.geom.AffineTransform;
import java.io.StringReader;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Copies a picture element by element, keeping account of inherited text properties and of the coordinate system, and
 * writes outlines where a {@code text} was. Understands positions, anchors, baselines and spans, properties given as
 * attributes, in {@code style} or by the rules of {@link CssRules}; not text on a path, nor characters placed one by
 * one. Nothing outside the text is read: no entity, no other file.
 */
final class SvgOutliner {
  /** Elements that nobody sees on paper. */
  private static final Set<String> DROPPED = Set.of("title", "desc", "metadata", "script", "foreignObject");

  /** Elements whose content is drawn elsewhere, or in a system of its own. */
  private static final Set<String> ELSEWHERE = Set.of("defs", "symbol", "marker", "pattern", "mask", "clipPath", "svg");

  private static final Set<String> OF_TEXT_ONLY = Set.of("x", "y", "dx", "dy", "rotate", "textLength", "lengthAdjust");

  private record Frame(String tag, TextStyle style, AffineTransform toPicture, boolean elsewhere) {}

  private final boolean lift;
  private final CssRules rules = new CssRules();
  private final Deque<Frame> open = new ArrayDeque<>();
  private final List<PlacedText> lifted = new ArrayList<>();
  private final SvgOutput out = new SvgOutput();
  private double width;
  private double height;

  SvgOutliner(boolean lift) {
    this.lift = lift;
  }

  OutlinedSvg read(String svg) throws UnreadablePictureException {
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    factory.setProperty(XMLInputFactory.IS_COALESCING, true);
    try {
      XMLStreamReader in = factory.createXMLStreamReader(new StringReader(svg));
      while (in.hasNext()) {
        int event = in.next();
        if (event == XMLStreamConstants.START_ELEMENT) {
          start(in);
        } else if (event == XMLStreamConstants.END_ELEMENT) {
          out.end(open.pop().tag());
        }
      }
    } catch (XMLStreamException e) {
      throw new UnreadablePictureException("the picture is not well-formed XML: " + e.getMessage(), e);
    }
    return new OutlinedSvg(out.text(), width, height, lifted);
  }

  private void start(XMLStreamReader in) throws XMLStreamException, UnreadablePictureException {
    String tag = in.getLocalName();
    if (open.isEmpty() && !tag.equals("svg")) {
      throw new UnreadablePictureException("the picture starts with <" + tag + ">, not with <svg>");
    }
    if (DROPPED.contains(tag)) {
      skip(in);
    } else if (tag.equals("style")) {
      rules.add(in.getElementText());
      out.start("style", Map.of());
      out.characters(rules.text());
      out.end("style");
    } else if (tag.equals("text")) {
      text(in);
    } else {
      Map<String, String> attributes = attributes(in);
      Frame frame = open.isEmpty() ? root(attributes) : child(tag, attributes);
      open.push(frame);
      out.start(tag, attributes);
    }
  }

  private Frame root(Map<String, String> attributes) throws UnreadablePictureException {
    SvgViewport viewport = SvgViewport.of(attributes);
    width = viewport.width();
    height = viewport.height();
    return new Frame("svg", TextStyle.INITIAL.with(says("svg", attributes)), viewport.toPixels(), false);
  }

  private Frame child(String tag, Map<String, String> attributes) {
    Frame parent = open.peek();
    AffineTransform toPicture = new AffineTransform(parent.toPicture());
    toPicture.concatenate(SvgTransform.of(attributes.getOrDefault("transform", "")));
    boolean elsewhere = parent.elsewhere() || ELSEWHERE.contains(tag) || attributes.containsKey("clip-path")
        || attributes.containsKey("mask") || attributes.containsKey("filter");
    return new Frame(tag, parent.style().with(says(tag, attributes)), toPicture, elsewhere);
  }

  private void text(XMLStreamReader in) throws XMLStreamException {
    Map<String, String> attributes = attributes(in);
    Frame frame = child("text", attributes);
    TextChunks chunks = new TextChunks();
    move(chunks, frame.style(), attributes, 0, 0);
    readRuns(in, chunks, frame.style());

    Map<String, String> kept = new LinkedHashMap<>(attributes);
    kept.keySet().removeAll(OF_TEXT_ONLY);
    out.start("g", kept);
    for (TextChunks.Piece piece : chunks.end()) {
      if (piece.style().shown()) {
        draw(piece, frame);
      }
    }
    out.end("g");
  }

  private void readRuns(XMLStreamReader in, TextChunks chunks, TextStyle outer) throws XMLStreamException {
    Deque<TextStyle> styles = new ArrayDeque<>(List.of(outer));
    while (!styles.isEmpty()) {
      int event = in.next();
      if (event == XMLStreamConstants.CHARACTERS || event == XMLStreamConstants.SPACE) {
        chunks.add(in.getText());
      } else if (event == XMLStreamConstants.START_ELEMENT && DROPPED.contains(in.getLocalName())) {
        skip(in);
      } else if (event == XMLStreamConstants.START_ELEMENT) {
        Map<String, String> attributes = attributes(in);
        TextStyle style = styles.peek().with(says(in.getLocalName(), attributes));
        styles.push(style);
        move(chunks, style, attributes, Double.NaN, Double.NaN);
      } else if (event == XMLStreamConstants.END_ELEMENT) {
        styles.pop();
        if (!styles.isEmpty()) {
          chunks.startRun(styles.peek(), 0, 0);
        }
      }
    }
  }

  private void move(TextChunks chunks, TextStyle style, Map<String, String> attributes, double x, double y) {
    if (attributes.containsKey("x") || attributes.containsKey("y")) {
      chunks.moveTo(length(attributes, "x", style, width, x), length(attributes, "y", style, height, y));
    }
    chunks.startRun(style, length(attributes, "dx", style, width, 0), length(attributes, "dy", style, height, 0));
  }

  private static double length(Map<String, String> attributes, String name, TextStyle style, double whole, double absent) {
    return SvgLength.pixels(attributes.getOrDefault(name, ""), style.size(), whole, absent);
  }

  private void draw(TextChunks.Piece piece, Frame frame) {
    TextStyle style = piece.style();
    OptionalInt rgb = PlainColor.rgb(style.fill());
    if (lift && !frame.elsewhere() && style.opaque() && style.stroke().equals("none") && rgb.isPresent()) {
      AffineTransform placed = new AffineTransform(frame.toPicture());
      placed.translate(piece.x(), piece.y());
      lifted.add(new PlacedText(piece.text(), style.face(), style.size(), rgb.getAsInt(), placed));
    } else {
      out.path(style.face().outline(piece.text(), style.size()), piece.x(), piece.y(), style.fill());
    }
  }

  /** What an element says about itself; a declaration outweighs an attribute. */
  private Map<String, String> says(String tag, Map<String, String> attributes) {
    Map<String, String> all = new LinkedHashMap<>(attributes);
    all.putAll(rules.of(tag, List.of(attributes.getOrDefault("class", "").strip().split("\\s+"))));
    all.putAll(CssRules.declarations(attributes.getOrDefault("style", "")));
    return all;
  }

  private static Map<String, String> attributes(XMLStreamReader in) {
    Map<String, String> all = new LinkedHashMap<>();
    for (int i = 0; i < in.getAttributeCount(); i++) {
      String prefix = in.getAttributePrefix(i);
      String name = in.getAttributeLocalName(i);
      if (prefix == null || prefix.isEmpty()) {
        all.put(name, in.getAttributeValue(i));
      } else if (prefix.equals("xml") || prefix.equals("xlink")) {
        all.put(prefix + ":" + name, in.getAttributeValue(i));
      }
    }
    return all;
  }

  private static void skip(XMLStreamReader in) throws XMLStreamException {
    for (int depth = 1; depth > 0;) {
      int event = in.next();
      depth += event == XMLStreamConstants.START_ELEMENT ? 1 : event == XMLStreamConstants.END_ELEMENT ? -1 : 0;
    }
  }
}
