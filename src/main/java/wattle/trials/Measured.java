package wattle.trials;

import wattle.derivation.Derivation;

/**
 * What an expectation asks for, as found.
 *
 * @param sentence for a headline, with the figure left to be put in for {@code %s}: {@code the neutral of 'x' carries %s}
 * @param where it was found, such as {@code from P to kitchen.c1}; may be empty
 * @param reason why such a figure comes about; may be empty
 */
record Measured(Derivation figure, String sentence, String where, String reason) {}
