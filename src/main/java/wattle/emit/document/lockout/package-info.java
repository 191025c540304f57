/** Lockout sheets as text, page and JSON. Computes nothing: all it writes is in {@link wattle.lockout.Lockout}. */
package wattle.emit.document.lockout;
