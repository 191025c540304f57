package wattle.emit.document.report;

import java.util.List;
import wattle.emit.media.page.Markup;
import wattle.finding.Source;
import wattle.finding.Span;

/** The text of a plan's files with numbered lines, each with an id that findings link to. */
final class PlanText {
  /** A file of more lines is shown up to here; a page of a hundred thousand lines helps nobody. */
  static final int ON_SCREEN = 20_000;

  /** About fifty sheets. */
  static final int ON_PAPER = 5_000;

  private final List<Source> files;
  private final int most;

  /** @param most lines of one file that are shown */
  PlanText(List<Source> files, int most) {
    this.files = files;
    this.most = most;
  }

  /** The id of the line where a span starts; of its file, where the line is not shown. */
  String idOf(Span span) {
    int file = Math.max(0, files.indexOf(span.source()));
    return span.line() > most ? "file" + file : "f" + file + "l" + span.line();
  }

  void writeTo(Markup page) {
    for (int file = 0; file < files.size(); file++) {
      Source source = files.get(file);
      int lines = Math.min(source.lineCount(), most);
      page.element("h3", source.name(), "id", "file" + file);
      page.open("div", "class", "plan", "role", "group", "tabindex", "0", "aria-label", "Text of " + source.name());
      for (int line = 1; line <= lines; line++) {
        page.open("div", "class", "line", "id", "f" + file + "l" + line);
        page.element("span", Integer.toString(line), "class", "number", "aria-hidden", "true");
        page.element("code", source.line(line)).close();
      }
      page.close();
      if (lines < source.lineCount()) {
        page.element("p", "The file continues to line " + source.lineCount() + ".", "class", "note");
      }
    }
  }
}
