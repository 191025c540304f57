/** Expressions of the notation to quantities, with their dimensions checked. Knows syntax and quantity. */
package wattle.evaluate;
