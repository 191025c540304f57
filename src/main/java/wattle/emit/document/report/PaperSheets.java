package wattle.emit.document.report;

import java.util.IdentityHashMap;
import java.util.Map;
import wattle.emit.media.drawing.Legend;
import wattle.emit.media.drawing.View;
import wattle.emit.media.paper.PagePicture;
import wattle.emit.media.picture.Paper;
import wattle.words.Caution;

/** The pictures of a report as they are printed, each cut once. */
final class PaperSheets {
  private static final Paper PAPER = Paper.LETTER;

  private final Map<Content, PagePicture> pictures = new IdentityHashMap<>();

  PagePicture of(Content.Picture picture) {
    return of(picture, picture.onPaper(), signs(picture.onPaper().legend()));
  }

  PagePicture of(Content.Folded picture) {
    return of(picture, picture.onPaper(), picture.signs());
  }

  /** Without the caution, which the first page says. */
  private static Legend signs(Legend legend) {
    return new Legend(legend.items(), legend.notes().stream().filter(n -> !n.equals(Caution.LONG) && !n.equals(Caution.SHORT)).toList());
  }

  private PagePicture of(Content content, View view, Legend legend) {
    return pictures.computeIfAbsent(content, c -> PagePicture.of(view, legend, PAPER));
  }

  /** Whether it is pictures, of which one is wider than an upright page. */
  boolean isTurned(Part part) {
    return part.isPictures()
        && part.contents().stream().map(Content.Picture.class::cast).map(this::of).anyMatch(PagePicture::turned);
  }
}
