/**
 * Dimensions, units, quantities and wire sizes. Knows nothing else of the project.
 *
 * <p>The table of units is our own and not that of a JSR-385 library. Measured on a 2-core machine with JDK 17 and
 * {@code -XX:+UseSerialGC -XX:TieredStopAtLevel=1}, medians of 11 whole processes: a program that prints one word takes
 * 0.12 s; one that multiplies two quantities with indriya 2.2.3 takes 0.34 s, and with an archive of its classes 0.27 s
 * against 0.11 s. That is more than the parser needs for a house, on every run of the command line. The table is small,
 * and the spellings of the trade ({@code kcmil}, {@code mm2}) are in no general library. The tests hold every factor,
 * every offset and the algebra of dimensions against indriya.
 *
 * <p>Temperatures. {@code °C} and {@code °F} are scales with a zero of their own, {@code K} is the difference between
 * two temperatures or a temperature from absolute zero. What is written after {@code +} or {@code −} counts as a
 * difference, whatever its unit: {@code 30 degC + 10 K}, {@code 30 degC + 10 degC} and {@code 30 degC + 18 degF} are all
 * 40 °C, as a reader would take them. In a product or a quotient with another dimension a temperature counts from
 * absolute zero; times a plain number it is scaled as written.
 */
package wattle.quantity;
