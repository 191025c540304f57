/** A term of the trade with a figure and a picture from the lessons. */
package wattle.emit.document.primer;
