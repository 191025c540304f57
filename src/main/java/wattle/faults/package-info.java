/**
 * Fault currents. In: a bound house, its conductors and the library's tables. Out: what a bolted short circuit can drive at
 * every panel and box, between what and what, how long the breaker may take over it, and what that does to the conductors.
 * Knows {@code model}, {@code library} and {@code conductors}.
 */
package wattle.faults;
