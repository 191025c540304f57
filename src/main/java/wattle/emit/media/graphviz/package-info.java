/**
 * Graphs to pictures: takes a graph in the DOT language, gives it back laid out, as SVG or one of Graphviz's text
 * formats. The engine is Graphviz's own code, compiled to JVM classes by the build: nothing is installed, no native
 * code is loaded and no file is touched. Entry: {@link wattle.emit.media.graphviz.DotEngine}. Knows nothing of plans.
 */
package wattle.emit.media.graphviz;
