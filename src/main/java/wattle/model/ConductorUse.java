package wattle.model;

/**
 * A conductor of a run and what it does there.
 *
 * @param reidentified whether a white conductor works as something other than a neutral, and so must be marked
 */
public record ConductorUse(Wire wire, Role role, boolean reidentified) {}
