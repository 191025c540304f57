/** Test sheets, to be filled in by hand or in a spreadsheet. Computes nothing. */
package wattle.emit.document.acceptance;
