package wattle.emit.media.picture;

import java.io.StringReader;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * What an SVG says of itself in words.
 *
 * @param title of the whole picture; empty where it has none
 * @param description of the whole picture; empty where it has none
 */
record SvgWords(String title, String description) {
  /** @throws UnreadablePictureException if it is not XML */
  static SvgWords of(String svg) throws UnreadablePictureException {
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_COALESCING, true);
    String title = "";
    String description = "";
    try {
      XMLStreamReader reader = factory.createXMLStreamReader(new StringReader(svg));
      int depth = 0;
      while (reader.hasNext()) {
        int event = reader.next();
        if (event == XMLStreamConstants.START_ELEMENT) {
          boolean ofTheWhole = depth == 1;
          if (ofTheWhole && title.isEmpty() && reader.getLocalName().equals("title")) {
            title = reader.getElementText();
          } else if (ofTheWhole && description.isEmpty() && reader.getLocalName().equals("desc")) {
            description = reader.getElementText();
          } else {
            depth++;
          }
        } else if (event == XMLStreamConstants.END_ELEMENT) {
          depth--;
        }
      }
    } catch (XMLStreamException e) {
      throw new UnreadablePictureException("the picture is not XML: " + e.getMessage(), e);
    }
    return new SvgWords(title.strip(), description.strip());
  }

  /** Both, the title first. */
  String inOne() {
    return title.isEmpty() || description.isEmpty() ? title + description : title + ". " + description;
  }
}
