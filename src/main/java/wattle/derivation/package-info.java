/**
 * How a figure was come by: name, formula, inputs with their values, table and source, result. Every computed figure of
 * the product carries a {@link wattle.derivation.Derivation} or makes one when asked, and every output unfolds it from
 * there. Knows {@code quantity} and, of {@code finding}, the citation.
 */
package wattle.derivation;
