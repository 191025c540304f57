/**
 * Load calculations of dwellings, line by line: which method a code pack has, what it needs of a house, what comes out.
 * In: {@link wattle.worksheet.Inputs} and the tables and limits of the library. Out: {@link wattle.worksheet.Worksheet},
 * each figure with its derivation, or why a method does not fit. Knows the model and the library.
 */
package wattle.worksheet;
