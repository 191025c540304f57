/** The tables of a plan by the words that ask for them: {@code table --of}, the report and the names of figures share them. */
package wattle.emit.sheet.tables;
