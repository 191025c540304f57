/** Values that are made when they are first asked for: a leaf that knows nothing of wiring. */
package wattle.memo;
