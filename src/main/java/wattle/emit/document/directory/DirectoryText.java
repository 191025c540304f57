package wattle.emit.document.directory;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import wattle.model.House;
import wattle.model.Panel;
import wattle.words.Caution;

/** Directories as plain text, for a terminal: each panel's slots from the top, the left column before the right. */
public final class DirectoryText {
  private static final String GAP = "  ";

  private DirectoryText() {}

  /** All panels one after the other; a slot is one line, and what must not be overlooked stands under it. */
  public static String render(House house, List<Panel> panels) {
    StringBuilder text = new StringBuilder();
    for (Panel panel : panels) {
      panel(text, house, panel);
    }
    return text.append(Caution.LONG).append('\n').toString();
  }

  private static void panel(StringBuilder text, House house, Panel panel) {
    PanelDirectory directory = PanelDirectory.of(house, panel);
    text.append("PANEL DIRECTORY: ").append(panel.title()).append('\n');
    text.append(DirectoryPage.head(house, panel)).append('\n');
    DirectoryPage.offEverything(directory).ifPresent(off -> text.append(off).append('\n'));
    text.append('\n');
    if (directory.twoColumns()) {
      text.append("left side, from the top\n");
      lines(text, directory.rows().stream().flatMap(r -> r.left().stream()));
      text.append("right side, from the top\n");
      lines(text, directory.rows().stream().flatMap(r -> r.right().stream()));
    } else {
      lines(text, directory.rows().stream().flatMap(r -> r.left().stream()));
    }
    text.append('\n');
  }

  private static void lines(StringBuilder text, Stream<DirectoryLine> side) {
    List<DirectoryLine> lines = side.toList();
    int slots = lines.stream().mapToInt(l -> l.slots().length()).max().orElse(0);
    int ratings = lines.stream().mapToInt(l -> l.breaker().length()).max().orElse(0);
    for (DirectoryLine line : lines) {
      List<String> words = new ArrayList<>(List.of(line.words()));
      if (!line.unsaidRooms().isEmpty()) {
        words.add(String.join(", ", line.unsaidRooms()));
      }
      text.append(GAP).append(padded(line.slots(), slots)).append(GAP).append(padded(line.breaker(), ratings)).append(GAP)
          .append(String.join(" \u2014 ", words)).append('\n');
      line.notes().forEach(n -> text.append(GAP.repeat(3)).append(" ".repeat(slots + ratings)).append("! ").append(n).append('\n'));
    }
  }

  private static String padded(String text, int width) {
    return text + " ".repeat(width - text.length());
  }
}
