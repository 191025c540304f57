package wattle.model;

import java.util.Optional;

/**
 * One pole of a breaker.
 *
 * @param leg absent only where the slot is out of range, which is a finding
 */
public record Pole(Slot slot, Optional<Leg> leg) {}
