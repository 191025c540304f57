package wattle.emit.document.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.emit.media.drawing.Drawing;

/**
 * The parts of a report in the order of paper. Pictures that need a sheet follow each other behind the first page, so that no page before
 * one ends early, and a sheet that the first of them leaves half empty takes the next, or the load of the legs.
 */
final class PaperSheets {
  private final List<Part> first = new ArrayList<>();
  private final List<Part> rest;
  private final Optional<Part> sharing;

  private PaperSheets(List<Part> first, List<Part> rest, Optional<Part> sharing) {
    this.first.addAll(first);
    this.rest = List.copyOf(rest);
    this.sharing = sharing;
  }

  static PaperSheets of(Report report) {
    List<Part> first = new ArrayList<>(report.first());
    List<Part> rest = new ArrayList<>(report.rest());
    Optional<Part> sheet = first.stream().filter(PaperSheets::isLarge).findFirst();
    if (sheet.isEmpty()) {
      return new PaperSheets(first, rest, Optional.empty());
    }
    for (Part part : report.rest()) {
      boolean fits = part.isPicture() && PaperPicture.shareASheet(drawing(sheet.get()), drawing(part));
      if (fits || isLarge(part)) {
        rest.remove(part);
        if (fits) {
          return new PaperSheets(first, rest, Optional.of(part));
        }
        first.add(part);
        return new PaperSheets(first, rest, Optional.empty()).withLegs(sheet.get());
      }
    }
    return new PaperSheets(first, rest, Optional.empty()).withLegs(sheet.get());
  }

  /** The picture of the legs on the first sheet, where that has room for it and nothing else. */
  private PaperSheets withLegs(Part sheet) {
    for (Part part : rest) {
      Optional<Content.Picture> legs = part.contents().stream().filter(Content.Picture.class::isInstance).map(Content.Picture.class::cast)
          .filter(p -> !part.onDemand() && part.contents().size() > 1 && p.onPaper().size() == 1
              && PaperPicture.shareASheet(drawing(sheet), p.onPaper().get(0)))
          .findFirst();
      if (legs.isPresent()) {
        List<Part> before = new ArrayList<>(first);
        before.set(before.indexOf(sheet), sheet.with(List.of(sheet.contents().get(0), legs.get())));
        List<Part> after = new ArrayList<>(rest);
        after.set(after.indexOf(part), part.with(part.contents().stream().filter(c -> c != legs.get()).toList()));
        return new PaperSheets(before, after, sharing);
      }
    }
    return this;
  }

  List<Part> first() {
    return List.copyOf(first);
  }

  List<Part> rest() {
    return rest;
  }

  /** How the style sheet calls a part. */
  static String kind(Part part) {
    return !isLarge(part) ? "section" : PaperPicture.isTurned(drawing(part)) ? "section turned" : "section sheet";
  }

  /** The part that goes on where this one leaves half of its sheet. */
  Optional<Part> sharing(Part part) {
    return isLarge(part) ? sharing : Optional.empty();
  }

  /** Whether it has a sheet, and its first picture the size of that. */
  static boolean isLarge(Part part) {
    return part.isPictures() && PaperPicture.isLarge(drawing(part));
  }

  private static Drawing drawing(Part part) {
    return ((Content.Picture) part.contents().get(0)).onPaper().get(0);
  }
}
