/**
 * The difference of two revisions of a plan in things and figures of the house, not in lines: two models in, changes
 * out. Knows the model and the results computed from it.
 */
package wattle.compare;
