/**
 * Tables: a {@link wattle.emit.media.table.Sheet} of titled columns, made from the model and its figures, and its rendering as
 * text, CSV, JSON, Markdown and HTML.
 */
package wattle.emit.media.table;
