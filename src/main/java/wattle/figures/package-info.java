/**
 * A home for the figures of a house. In: a bound house and its library. Out: one value that whoever shows, judges or compares
 * asks, so that nothing is worked out twice. It knows every computation, and computes nothing itself.
 */
package wattle.figures;
