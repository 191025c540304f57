/**
 * The one-line diagram: service, panels, feeders and branches. In: the house and its connected loads. Graphviz places the
 * panels; what stands in them is drawn here, with the symbols of the published standards.
 */
package wattle.emit.view.oneline;
