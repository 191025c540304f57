package wattle.emit.media.picture;

import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDPropertyList;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.StandardStructureTypes;

/**
 * The structure of a document of pictures: each page is a figure with words for those who do not see it (ISO 32000-1, 14.7
 * and 14.8). All that a page shows is one piece of marked content with number 0.
 */
final class PdfTags {
  static final COSName FIGURE = COSName.getPDFName(StandardStructureTypes.Figure);
  private static final int CONTENT = 0;

  private final PDStructureTreeRoot root = new PDStructureTreeRoot();
  private final PDStructureElement whole;
  private final COSArray parents = new COSArray();

  PdfTags(PDDocument document) {
    PDMarkInfo marked = new PDMarkInfo();
    marked.setMarked(true);
    document.getDocumentCatalog().setMarkInfo(marked);
    document.getDocumentCatalog().setStructureTreeRoot(root);
    whole = new PDStructureElement(StandardStructureTypes.DOCUMENT, root);
    root.appendKid(whole);
  }

  /** The properties of a page's marked content. */
  static PDPropertyList content() {
    COSDictionary properties = new COSDictionary();
    properties.setInt(COSName.MCID, CONTENT);
    return PDPropertyList.create(properties);
  }

  /** Tells what a page shows. */
  void add(PDPage page, String title, String alternative) {
    int number = parents.size() / 2;
    page.setStructParents(number);
    page.getCOSObject().setItem(COSName.getPDFName("Tabs"), COSName.S);
    PDStructureElement figure = new PDStructureElement(StandardStructureTypes.Figure, whole);
    figure.setPage(page);
    figure.setTitle(title);
    figure.setAlternateDescription(alternative);
    figure.getCOSObject().setItem(COSName.K, COSInteger.get(CONTENT));
    figure.getCOSObject().setItem(COSName.A, layout(page.getMediaBox()));
    whole.appendKid(figure);
    COSArray contents = new COSArray();
    contents.add(figure);
    parents.add(COSInteger.get(number));
    parents.add(contents);
    COSDictionary tree = new COSDictionary();
    tree.setItem(COSName.NUMS, parents);
    root.getCOSObject().setItem(COSName.PARENT_TREE, tree);
    root.setParentTreeNextKey(number + 1);
  }

  /** Where the figure is; readers that reflow a page need it. */
  private static COSDictionary layout(PDRectangle place) {
    COSDictionary layout = new COSDictionary();
    layout.setItem(COSName.O, COSName.getPDFName("Layout"));
    layout.setItem(COSName.getPDFName("Placement"), COSName.getPDFName("Block"));
    layout.setItem(COSName.BBOX, place);
    return layout;
  }
}
