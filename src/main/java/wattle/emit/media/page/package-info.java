/** Pages that people print, hang up and carry: one frame and one way of writing them, as HTML that is also XML. */
package wattle.emit.media.page;
