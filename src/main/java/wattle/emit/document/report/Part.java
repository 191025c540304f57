package wattle.emit.document.report;

import java.util.List;
import java.util.Locale;

/**
 * A part of the report under a heading of its own.
 *
 * @param group of parts in the table of contents
 * @param contents in order
 */
public record Part(Group group, String title, List<Content> contents) {
  /** Parts that are looked for together. */
  public enum Group {
    CHECKED("What was found"), SUPPLY("Supply and panels"), LOADS("Loads"), BRANCHES("Branches"), ROOMS("Rooms and material"), TRIALS(
        "What if"), BASIS("What it rests on");

    private final String title;

    Group(String title) {
      this.title = title;
    }

    String title() {
      return title;
    }
  }

  public Part {
    contents = List.copyOf(contents);
  }

  /** In links: {@code load-worksheets}. */
  String id() {
    return title.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
  }

  /** Whether it is one picture and nothing else, which stands on a sheet of its own when printed. */
  boolean isPicture() {
    return contents.size() == 1 && contents.get(0) instanceof Content.Picture;
  }
}
