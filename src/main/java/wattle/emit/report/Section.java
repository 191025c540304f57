package wattle.emit.report;

/**
 * A part of the report under a heading of its own.
 *
 * @param id in the page, for links
 * @param title of the heading
 * @param body well-formed markup
 */
record Section(String id, String title, String body) {}
