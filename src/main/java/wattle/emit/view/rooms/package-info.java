/**
 * The schedule of a house room by room: each box with its devices, what they draw, what feeds and what protects them. In:
 * the house. Out: a drawing, or pieces for sheets.
 */
package wattle.emit.view.rooms;
