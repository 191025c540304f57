/**
 * The typed house: immutable records and sealed types, made by {@code bind} and read by everything above. Things refer
 * to each other by the names that the plan gave them; {@link wattle.model.House} finds them. What can be derived from
 * the text alone (legs, conductor roles, loads) is already in here; what needs computing is not.
 */
package wattle.model;
