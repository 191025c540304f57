/**
 * Patterns and their placements to the things they stand for, as if each had been written out. Comes in: what was written,
 * as trees. Goes out: trees again, without patterns and placements, whose names are those of the house and whose spans
 * know by which placement they came about. Knows nothing of what the things mean.
 */
package wattle.pattern;
