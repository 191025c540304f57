/**
 * Drawings as placed shapes, measured before they are drawn: what every view is made of, so that a test can see whether
 * texts overlap or leave the sheet. Lengths are CSS pixels, 96 to the inch; y grows downwards.
 */
package wattle.emit.media.drawing;
