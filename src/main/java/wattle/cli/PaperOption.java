package wattle.cli;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.View;
import wattle.emit.media.paper.Sheets;
import wattle.emit.media.paper.TitleBlock;
import wattle.emit.media.picture.Paper;
import wattle.model.House;

/** On what paper a picture is set, and what its title block says. */
final class PaperOption {
  /** How the paper lies. */
  enum Orientation {
    LANDSCAPE, PORTRAIT;

    @Override
    public String toString() {
      return EnumerationWord.of(this);
    }
  }

  @Option(
      names = "--paper",
      paramLabel = "PAPER",
      completionCandidates = KnownWords.Papers.class,
      description = "Lay the picture out on letter, A4, A3 or tabloid sheets with border, title block and legend (default: one "
          + "picture at its own size).")
  private String paper;

  @Option(names = "--orientation",
      description = "Orientation of the paper: ${COMPLETION-CANDIDATES} (default: the one that takes fewer sheets and shows more).")
  private Orientation orientation;

  @Option(names = "--date", paramLabel = "DATE", description = "The date in the title block, such as 2026-03-09 (default: left blank).")
  private String date;

  /** Whether sheets are asked for; options that mean nothing without them, and what is no paper or date, are refused. */
  boolean isGiven() {
    if (paper == null && (orientation != null || date != null)) {
      throw new Failure((orientation != null ? "--orientation" : "--date") + " is for sheets: give --paper too");
    }
    if (paper != null) {
      upright();
      date();
    }
    return paper != null;
  }

  private Paper upright() {
    return Paper.named(paper).orElseThrow(() -> new Failure("no paper is called '" + paper + "'; letter, A4, A3 and tabloid are known"));
  }

  /** Where nothing is drawn without another option, and that is not given. */
  void refuseWithout(String other) {
    String given = paper != null ? "--paper" : orientation != null ? "--orientation" : date != null ? "--date" : "";
    if (!given.isEmpty()) {
      throw new Failure(given + " is for the sheets of " + other + ": give " + other + " with a file too");
    }
  }

  /** Name of the paper of a page, as style sheets write it; only what pages are made for. */
  String page() {
    if (paper == null || paper.equalsIgnoreCase("letter") || paper.equalsIgnoreCase("A4")) {
      return paper == null || paper.equalsIgnoreCase("letter") ? "letter" : "A4";
    }
    throw new Failure("a page is laid out for letter or A4, not " + paper + "; other paper is for --picture");
  }

  /** The view on sheets. */
  List<Drawing> sheets(View view, House house) {
    Paper upright = upright();
    List<Paper> papers = orientation == null
        ? List.of(upright.turned(), upright)
        : List.of(orientation == Orientation.LANDSCAPE ? upright.turned() : upright);
    TitleBlock block = new TitleBlock(house.title().orElse("untitled plan"), house.revision(), date());
    List<Drawing> sheets = Sheets.of(view, block, papers);
    if (sheets.isEmpty()) {
      throw new Failure(
          "a part of this view is too large for " + paper + " paper with type of " + (int) Sheets.SMALLEST_TYPE + " points"
              + (orientation == null ? "; take larger paper, or leave --paper out" : "; take larger paper, or leave --orientation out"));
    }
    return sheets;
  }

  private Optional<String> date() {
    if (date == null) {
      return Optional.empty();
    }
    try {
      return Optional.of(LocalDate.parse(date).toString());
    } catch (DateTimeParseException e) {
      throw new Failure("'" + date + "' is not a date; write year, month and day, such as 2026-03-09");
    }
  }
}
