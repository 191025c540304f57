package wattle.emit.media.picture;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** What somebody with a ruler would measure on the pages of a PDF. */
public record PrintedPages(List<Printed> pages) {
  /** Of the gray of a pixel, what is taken for ink. */
  private static final int INK = 200;

  /** Where the number of a page stands. */
  private static final double FOOT = 0.93;

  public PrintedPages {
    pages = List.copyOf(pages);
  }

  /**
   * One page.
   *
   * @param number from 1
   * @param filled how far down it goes, as a part of its height; its number at the foot is not counted
   * @param leastOfWords the smallest type outside pictures, in points; the largest number where there is none
   * @param leastOfPictures likewise within them
   */
  public record Printed(int number, double filled, double leastOfWords, double leastOfPictures, String text) {}

  /** Measures a tagged PDF. */
  public static PrintedPages of(Path file) throws IOException {
    try (PDDocument document = Loader.loadPDF(file.toFile())) {
      TaggedPdf tags = new TaggedPdf(document);
      PDFRenderer renderer = new PDFRenderer(document);
      List<Printed> pages = new ArrayList<>();
      for (int page = 0; page < document.getNumberOfPages(); page++) {
        Words words = new Words();
        words.setStartPage(page + 1);
        words.setEndPage(page + 1);
        String text = words.getText(document);
        List<TextPosition> pictures = tags.inFigures(page);
        double inPictures = least(pictures);
        // The words of pictures are among all words of the page; their places tell them apart.
        double outside = least(words.all.stream().filter(w -> pictures.stream().noneMatch(p -> isSame(p, w))).toList());
        pages.add(new Printed(page + 1, filled(renderer.renderImageWithDPI(page, 18)), outside, inPictures, text));
      }
      return new PrintedPages(pages);
    }
  }

  /** The number of the first page with those words; 0 where none has them. */
  public int pageWith(String words) {
    return pages.stream().filter(p -> p.text().contains(words)).mapToInt(Printed::number).findFirst().orElse(0);
  }

  private static boolean isSame(TextPosition one, TextPosition other) {
    return one.getX() == other.getX() && one.getY() == other.getY() && one.getUnicode().equals(other.getUnicode());
  }

  /** The scale of the text is its size in points, which the library otherwise gives without its fraction. */
  private static double least(Collection<TextPosition> words) {
    return words.stream().mapToDouble(TextPosition::getYScale).min().orElse(Double.MAX_VALUE);
  }

  private static double filled(BufferedImage page) {
    for (int y = (int) (page.getHeight() * FOOT); y > 0; y--) {
      for (int x = 0; x < page.getWidth(); x++) {
        if ((page.getRGB(x, y) & 0xff) < INK) {
          return y / (double) page.getHeight();
        }
      }
    }
    return 0;
  }

  private static final class Words extends PDFTextStripper {
    private final List<TextPosition> all = new ArrayList<>();

    @Override
    protected void processTextPosition(TextPosition text) {
      all.add(text);
      super.processTextPosition(text);
    }
  }
}
