/** The front of a panel, slot by slot where it is in the enclosure. In: the house. Out: a drawing, and a graph in words. */
package wattle.emit.view.panelfront;
