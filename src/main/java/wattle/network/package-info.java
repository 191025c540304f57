/**
 * Volts and amps in a network of boxes joined by runs: a tree of bundles of conductors with sources, loads, faults, earth
 * electrodes, and links where it is no tree. In comes a {@link wattle.network.Network}, out a
 * {@link wattle.network.Solution} whose currents have been checked against Kirchhoff's law at every node. Pure
 * arithmetic: it knows nothing of houses but how a load behaves.
 */
package wattle.network;
