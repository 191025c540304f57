/** Schedules of a house as sheets: panels, loads, runs. In: a compilation and its figures. No computing of its own. */
package wattle.emit.sheet.schedule;
