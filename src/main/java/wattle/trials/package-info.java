/**
 * What happens in a house when something is on, open or wrong. In come a house with the library's tables and the events of
 * a trial; out come volts, amperes and watts of every outlet, conductor and joint, and the findings of expectations that do
 * not hold. The house is written down as a {@link wattle.network.Network}; all figures are its solution, with a derivation
 * each.
 */
package wattle.trials;
