/**
 * Texts to trees: the plan, the files and packs that it uses, the library that they make together, and what is remembered of
 * them from one key stroke to the next. Entries are {@link wattle.read.Imports} and {@link wattle.read.PlanLibrary}. Knows
 * syntax and library.
 */
package wattle.read;
