package wattle.model;

import java.util.Optional;

/**
 * A raceway or bored hole that several runs may pass through.
 *
 * @param size trade size and kind as written; absent for a bored hole
 */
public record Raceway(
    String name,
    Optional<String> label,
    Optional<String> size,
    Surroundings surroundings,
    Status status,
    Origin origin) {}
