/** What a reader wants of a plan first: its worst findings and its deciding figures, on half a page. */
package wattle.emit.document.glance;
