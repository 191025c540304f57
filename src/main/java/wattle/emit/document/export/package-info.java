/**
 * A whole plan as one JSON document for other programs: what it says, and the figures that follow. Entry is
 * {@link wattle.emit.document.export.PlanExport}; it asks the figures of the house and computes nothing.
 */
package wattle.emit.document.export;
