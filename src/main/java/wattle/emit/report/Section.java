package wattle.emit.report;

/**
 * A part of the report under a heading of its own.
 *
 * @param id in the page, for links
 * @param title of the heading
 * @param body well-formed markup, for the screen
 * @param paper the same for paper, where nothing unfolds or scrolls
 */
record Section(String id, String title, String body, String paper) {
  /** A part that is the same on the screen and on paper. */
  static Section same(String id, String title, String body) {
    return new Section(id, title, body, body);
  }
}
