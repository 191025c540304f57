/**
 * Plots of figures along scales: the time-current plot of a branch, voltage along a branch, load of each leg. In: figures
 * that the computations made. Out: placed shapes. Computes nothing but where things stand.
 */
package wattle.emit.view.plot;
