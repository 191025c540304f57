/**
 * Text of a plan on its way into a format: names and titles can hold any character, and must arrive as text, never as
 * mark-up, code, a formula or an order to a terminal. Knows nothing of plans.
 */
package wattle.emit.media.text;
