/**
 * What conductors do: resistance, reactance, ampacity with each of its steps, running temperature, the breakers and
 * grounds that go with them, and what a short circuit does to them. Pure functions over the library's tables and the
 * model; a figure whose table is missing is absent, never guessed, and every figure carries its derivation.
 *
 * <p>The classes that take a {@code Library} are made once for a compilation and may be shared by threads.
 */
package wattle.conductors;
