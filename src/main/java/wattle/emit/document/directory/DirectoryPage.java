package wattle.emit.document.directory;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import wattle.emit.media.page.Markup;
import wattle.emit.media.page.Page;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.words.BreakerWords;
import wattle.words.Caution;

/** Directories as pages: one sheet a panel for the door, or a card to be folded once. */
public final class DirectoryPage {
  private static final String CAUTION = "House current kills. The inside of this panel stays live when its breakers are off. This "
      + "list is from a plan, not from measurements. "
      + Caution.LONG;

  private static final String STYLE = """
      .dir { table-layout: fixed; }
      .dir td { padding: 0.12em 0.4em; vertical-align: middle; }
      .slot { width: 6%; font-weight: bold; text-align: center; font-size: 120%; }
      .rate { width: 14%; font-size: 93%; }
      .what { font-weight: bold; }
      .rooms { font-weight: normal; font-size: 93%; }
      .note { font-weight: bold; font-size: 93%; border: 1pt solid #000; padding: 0 0.2em; }
      .empty { color: #555; font-weight: normal; }
      .panel { page-break-after: always; }
      .last { page-break-after: auto; }
      .dir tr { height: 2em; }
      .half { width: 50%; height: 480pt; padding: 0 1.5em; border: 0; vertical-align: top; font-size: 12pt; }
      .half h1 { font-size: 30pt; margin-top: 90pt; }
      .notes td { height: 26pt; }
      .card > tbody > tr > td.half { border: 0; }
      .fold { border-left: 0.6pt dashed #888 !important; }
      """;

  private DirectoryPage() {}

  /** One sheet a panel, upright. */
  public static Page sheet(House house, List<Panel> panels, String paper) {
    Markup body = new Markup();
    for (Panel panel : panels) {
      PanelDirectory directory = PanelDirectory.of(house, panel);
      body.open("div", "class", panel == panels.get(panels.size() - 1) ? "panel last" : "panel");
      body.element("h1", panel.title());
      body.element("p", head(house, panel));
      body.element("p", CAUTION, "class", "caution small");
      offEverything(directory).ifPresent(off -> body.element("p", off, "class", "what"));
      table(body, directory, size(directory, 13, 590));
      body.close();
    }
    return new Page("Panel directory: " + title(house), paper, STYLE, body.toString());
  }

  /**
   * Two sides of one sheet for each panel, turned: the outside with the name and what switches everything off, the inside
   * with the slots. Printed on both sides, turned on the short edge, and folded once.
   */
  public static Page card(House house, List<Panel> panels, String paper) {
    Markup body = new Markup();
    for (Panel panel : panels) {
      PanelDirectory directory = PanelDirectory.of(house, panel);
      body.open("div", "class", "panel");
      body.open("table", "class", "card").open("tr").open("td", "class", "half");
      body.element("h2", "Before you touch anything");
      body.element("p", CAUTION, "class", "caution");
      offEverything(directory).ifPresent(off -> body.element("p", off, "class", "what"));
      changes(body);
      body.close().open("td", "class", "half fold");
      body.element("h1", panel.title());
      body.element("p", head(house, panel));
      body.element("p", "Fold along the dashed line, with the slots inside.", "class", "small");
      body.close().close().close().close();
      body.open("div", "class", panel == panels.get(panels.size() - 1) ? "panel last" : "panel");
      body.element("p", panel.title(), "class", "what");
      table(body, directory, size(directory, 11, 520));
      body.close();
    }
    return new Page("Panel directory: " + title(house), paper + " landscape", STYLE, body.toString());
  }

  private static String title(House house) {
    return house.title().orElse("plan");
  }

  static String head(House house, Panel panel) {
    List<String> words = new ArrayList<>();
    words.add("Panel " + panel.name());
    words.add(panel.system().text());
    if (panel.supply() instanceof PanelSupply.FromBreaker from) {
      String above = house.panels().containsKey(from.breaker().panel())
          ? house.panels().get(from.breaker().panel()).title()
          : from.breaker().panel();
      words.add("fed from " + above + ", slot " + from.breaker().slotText());
    } else if (panel.supply() instanceof PanelSupply.FromService from) {
      words.add("fed from service " + from.service());
    }
    words.add(title(house) + house.revision().map(r -> ", revision " + r).orElse(""));
    return String.join(" \u2014 ", words);
  }

  /** What must be opened to switch the whole panel off, sources behind its breakers included. */
  static Optional<String> offEverything(PanelDirectory directory) {
    Panel panel = directory.panel();
    List<String> steps = new ArrayList<>();
    if (panel.main().isPresent()) {
      steps.add(BreakerWords.main(panel.main().get()));
    } else if (panel.supply() instanceof PanelSupply.FromBreaker from) {
      steps.add(from.breaker().panel() + ", slot " + from.breaker().slotText());
    }
    for (Breaker breaker : panel.breakers()) {
      if (breaker.backFed()) {
        steps.add("slot " + breaker.id().slotText() + ", which feeds back");
      }
    }
    return steps.isEmpty() ? Optional.empty() : Optional.of("To switch everything off: " + String.join("; then ", steps) + ".");
  }

  /** Letters as large as the rows allow, in points; a row may need two lines. */
  private static double size(PanelDirectory directory, double largest, double height) {
    long lines = directory.rows().stream().mapToLong(r -> Math.max(1, Math.max(r.left().size(), r.right().size()))).sum();
    return Math.max(5.5, Math.min(largest, height / Math.max(1, lines) / 2.75));
  }

  /** Room for what is changed by hand until the plan is printed again. */
  private static void changes(Markup body) {
    body.element("h2", "Changes and corrections").open("table", "class", "notes");
    body.row("th", "Slot", "What", "Date, by");
    for (int i = 0; i < 6; i++) {
      body.row("td", "", "", "");
    }
    body.close();
  }

  private static void table(Markup body, PanelDirectory directory, double points) {
    body.open("table", "class", "dir", "style", String.format(Locale.ROOT, "font-size: %.1fpt", points));
    List<PanelDirectory.Row> rows = directory.rows();
    for (int i = 0; i < rows.size(); i++) {
      // Half-size breakers have lines of their own, so a row of the panel is as many rows of the table.
      for (int line = 0; line < lines(rows.get(i)); line++) {
        body.open("tr");
        side(body, rows, i, line, true);
        if (directory.twoColumns()) {
          side(body, rows, i, line, false);
        }
        body.close();
      }
    }
    body.close();
  }

  private static int lines(PanelDirectory.Row row) {
    return Math.max(1, Math.max(row.left().size(), row.right().size()));
  }

  private static void side(Markup body, List<PanelDirectory.Row> rows, int index, int line, boolean left) {
    PanelDirectory.Row row = rows.get(index);
    List<DirectoryLine> here = left ? row.left() : row.right();
    int reach = left ? row.leftRows() : row.rightRows();
    if (reach == 0 || line > 0 && here.size() < 2) {
      return;
    }
    if (line >= here.size()) {
      body.element("td", "", "colspan", "3");
      return;
    }
    int span = here.size() > 1 ? 1 : rows.subList(index, index + reach).stream().mapToInt(DirectoryPage::lines).sum();
    DirectoryLine shown = here.get(line);
    String rowspan = Integer.toString(span);
    if (left) {
      slots(body, shown, rowspan);
      body.open("td", "rowspan", rowspan);
      words(body, shown);
      body.close().element("td", shown.breaker(), "rowspan", rowspan, "class", "rate");
    } else {
      body.element("td", shown.breaker(), "rowspan", rowspan, "class", "rate").open("td", "rowspan", rowspan);
      words(body, shown);
      body.close();
      slots(body, shown, rowspan);
    }
  }

  /** One number under the other, as they stand in the panel. */
  private static void slots(Markup body, DirectoryLine line, String rowspan) {
    body.open("td", "rowspan", rowspan, "class", "slot");
    for (String slot : line.slots().split("\\+")) {
      body.element("div", slot);
    }
    body.close();
  }

  private static void words(Markup body, DirectoryLine line) {
    body.element("span", line.words(), "class", line.of().isPresent() ? "what" : "empty");
    List<String> rooms = line.unsaidRooms();
    if (!rooms.isEmpty()) {
      body.element("span", " \u2014 " + String.join(", ", rooms), "class", "rooms");
    }
    line.notes().forEach(n -> body.text(" ").element("span", n, "class", "note"));
  }
}
