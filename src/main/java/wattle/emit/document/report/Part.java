package wattle.emit.document.report;

import java.util.List;
import java.util.Locale;

/**
 * A part of the report under a heading of its own.
 *
 * @param group of parts in the table of contents
 * @param contents in order
 * @param onDemand whether it is printed only where each branch, room and box is asked for
 */
public record Part(Group group, String title, List<Content> contents, boolean onDemand) {
  /** Of every report. */
  public Part(Group group, String title, List<Content> contents) {
    this(group, title, contents, false);
  }

  /** Printed unasked only where it says more than that the plan has nothing of the kind. */
  static Part whereAny(Group group, String title, List<Content> contents) {
    return new Part(group, title, contents, contents.stream().allMatch(Content.Remark.class::isInstance));
  }

  /** Of one branch, room or box after the other: too long to be printed unasked. */
  static Part onDemand(Group group, String title, List<Content> contents) {
    return new Part(group, title, contents, true);
  }

  /** Parts that are looked for together. */
  public enum Group {
    FIRST("In short"), CHECKED("Findings and scope"), SUPPLY("Supply and panels"), LOADS("Loads"), BRANCHES("Branches"), ROOMS(
        "Rooms and material"), TRIALS(
            "What if"), BASIS("Assumptions and calculations");

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

  /** The same with other contents. */
  Part with(List<Content> others) {
    return new Part(group, title, others, onDemand);
  }

  /** Whether it is pictures and nothing else, which stand on a sheet of their own when printed. */
  boolean isPictures() {
    return !contents.isEmpty() && contents.stream().allMatch(Content.Picture.class::isInstance);
  }

  /** Whether it is a single one. */
  boolean isPicture() {
    return contents.size() == 1 && isPictures();
  }
}
