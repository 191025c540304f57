/**
 * Dimensions, units, quantities and wire sizes. The table of units is our own: it is small, every plan needs it at
 * start-up, and the trade's spellings ({@code kcmil}, {@code mm2}) are in no general library; the tests hold each factor
 * against a JSR-385 library. Knows nothing else of the project.
 */
package wattle.quantity;
