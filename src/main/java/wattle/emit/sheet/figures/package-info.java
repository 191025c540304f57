/** The figures of a plan by their names: found, listed and unfolded one at a time. */
package wattle.emit.sheet.figures;
