/** How far the rules could be told: what was checked, and what was not because the plan does not say. */
package wattle.emit.sheet.coverage;
