/**
 * Views on sheets of paper: a border, a title block, the legend, and as many sheets as it takes with type large enough to
 * read. In: a {@link wattle.emit.media.drawing.View}. Out: a drawing for each sheet. Entry: {@link wattle.emit.media.paper.Sheets}.
 */
package wattle.emit.media.paper;
