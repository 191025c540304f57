/**
 * Trees to model: names, constants, legs from slots, the roles of conductors, loads; and the
 * findings about what does not fit together. Its one entry is {@link wattle.bind.Binder}. Knows syntax, library and
 * model.
 */
package wattle.bind;
