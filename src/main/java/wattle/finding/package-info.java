/**
 * The leaf beneath every phase: source text, spans, findings and fixes, all of it data. Knows nothing else of the
 * project.
 */
package wattle.finding;
