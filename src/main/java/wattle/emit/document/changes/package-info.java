/** The difference of two revisions as text, Markdown and JSON. */
package wattle.emit.document.changes;
