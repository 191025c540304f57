package wattle.emit.media.picture;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkedContentReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDMarkedContent;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDPropertyList;
import org.apache.pdfbox.text.PDFMarkedContentExtractor;
import org.apache.pdfbox.text.TextPosition;

/** The structure of a PDF, as a reader that speaks it would walk it (ISO 32000-1, 14.7). */
public final class TaggedPdf {
  private final PDDocument document;
  private final Map<String, Integer> kinds = new HashMap<>();
  private final List<String> alternatives = new ArrayList<>();
  private final Map<COSDictionary, Set<Integer>> contents = new HashMap<>();
  private final Map<COSDictionary, Set<Integer>> cells = new HashMap<>();
  private final Map<COSDictionary, Set<Integer>> figures = new HashMap<>();

  public TaggedPdf(PDDocument document) {
    this.document = document;
    walk(document.getDocumentCatalog().getStructureTreeRoot(), null, false, false);
  }

  private void walk(PDStructureNode node, COSDictionary page, boolean inCell, boolean inFigure) {
    for (Object kid : node.getKids()) {
      if (kid instanceof PDStructureElement element) {
        kinds.merge(element.getStructureType(), 1, Integer::sum);
        if (element.getStructureType().equals("Figure")) {
          alternatives.add(element.getAlternateDescription());
        }
        COSDictionary own = element.getCOSObject().getCOSDictionary(COSName.PG);
        walk(element, own == null ? page : own, inCell || Set.of("TD", "TH").contains(element.getStructureType()),
            inFigure || element.getStructureType().equals("Figure"));
      } else if (kid instanceof Integer number) {
        add(page, number, inCell, inFigure);
      } else if (kid instanceof PDMarkedContentReference reference) {
        COSDictionary own = reference.getCOSObject().getCOSDictionary(COSName.PG);
        add(own == null ? page : own, reference.getMCID(), inCell, inFigure);
      }
    }
  }

  private void add(COSDictionary page, int number, boolean inCell, boolean inFigure) {
    contents.computeIfAbsent(page, p -> new HashSet<>()).add(number);
    if (inCell) {
      cells.computeIfAbsent(page, p -> new HashSet<>()).add(number);
    }
    if (inFigure) {
      figures.computeIfAbsent(page, p -> new HashSet<>()).add(number);
    }
  }

  /** What stands in cells of tables on a page. */
  public List<TextPosition> inCells(int page) throws IOException {
    return within(cells, page);
  }

  /** What stands in pictures on a page. */
  public List<TextPosition> inFigures(int page) throws IOException {
    return within(figures, page);
  }

  private List<TextPosition> within(Map<COSDictionary, Set<Integer>> elements, int page) throws IOException {
    List<TextPosition> all = new ArrayList<>();
    for (PDMarkedContent content : marked(page)) {
      gather(content, elements.getOrDefault(document.getPage(page).getCOSObject(), Set.of()), false, all);
    }
    return all;
  }

  private static void gather(PDMarkedContent content, Set<Integer> wanted, boolean within, List<TextPosition> all) {
    boolean in = within || content.getMCID() >= 0 && wanted.contains(content.getMCID());
    for (Object part : content.getContents()) {
      if (part instanceof TextPosition text && in) {
        all.add(text);
      } else if (part instanceof PDMarkedContent inner) {
        gather(inner, wanted, in, all);
      }
    }
  }

  /** How many elements of a kind there are. */
  public int count(String kind) {
    return kinds.getOrDefault(kind, 0);
  }

  /** What is read aloud for each figure; null where nothing is. */
  public List<String> alternatives() {
    return alternatives;
  }

  /** Text of a page that is neither in the structure nor marked as an artifact. */
  public String unreachable(int page) throws IOException {
    StringBuilder lost = new StringBuilder();
    for (PDMarkedContent content : marked(page)) {
      collect(content, contents.getOrDefault(document.getPage(page).getCOSObject(), Set.of()), lost);
    }
    return lost.toString();
  }

  private List<PDMarkedContent> marked(int page) throws IOException {
    // The library takes the name of a property list for the tag, and does not look the list up.
    PDFMarkedContentExtractor extractor = new PDFMarkedContentExtractor() {
      @Override
      public void beginMarkedContentSequence(COSName tag, COSDictionary properties) {
        PDPropertyList named = properties == null && getResources() != null ? getResources().getProperties(tag) : null;
        super.beginMarkedContentSequence(tag, named == null ? properties : named.getCOSObject());
      }
    };
    extractor.processPage(document.getPage(page));
    return extractor.getMarkedContents();
  }

  private static void collect(PDMarkedContent content, Set<Integer> told, StringBuilder lost) {
    boolean artifact = content.getProperties() != null && "Pagination".equals(content.getProperties().getNameAsString("Type"));
    if (artifact || content.getMCID() >= 0 && told.contains(content.getMCID())) {
      return;
    }
    for (Object part : content.getContents()) {
      if (part instanceof TextPosition text) {
        lost.append(text.getUnicode());
      } else if (part instanceof PDMarkedContent inner) {
        collect(inner, told, lost);
      }
    }
  }
}
