/** A branch drawn box by box with the figures of a trial on it. */
package wattle.emit.view.trialpicture;
