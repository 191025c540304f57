/** Load worksheets as tables: line by line, what comes of them, methods side by side, before and after an addition. */
package wattle.emit.sheet.worksheet;
