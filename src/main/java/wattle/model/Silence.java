package wattle.model;

import java.util.Optional;

/**
 * A finding that the plan silences.
 *
 * @param at name of the thing it is silenced at; absent for everywhere
 */
public record Silence(String rule, Optional<String> at, String reason, Origin origin) {}
