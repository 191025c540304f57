package wattle.worksheet;

import wattle.finding.Citation;

/**
 * A method of load calculation that a code pack has.
 *
 * @param name as commands ask for it
 * @param mechanism which computation it is
 * @param title for readers
 */
public record Method(String name, Mechanism mechanism, String title, Citation source) {}
