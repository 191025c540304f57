/** Derivations written out: every figure down to what the plan states and what a table says, as text, JSON and HTML. */
package wattle.emit.media.unfolded;
