/**
 * What to switch off before a box is opened. In: the bound house and a place in it. Out: a {@link wattle.lockout.Lockout}
 * with the handles to open, what goes dead with them, what stays live near by, and where to prove dead. Everything is
 * derived from the plan; nothing is measured, and nothing here says that a place is safe.
 */
package wattle.lockout;
