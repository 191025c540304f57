/**
 * The standard library and local packs as one typed value: parts, cable types, tables, limits and rules, each with its
 * source. It is text in the notation itself, read by the same parser; this package turns that tree into values that are
 * handed to the phases above as arguments.
 */
package wattle.library;
