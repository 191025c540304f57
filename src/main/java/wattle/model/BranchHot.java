package wattle.model;

import java.util.Optional;

/**
 * One hot of a branch, at its panel.
 *
 * @param breaker the breaker it comes from
 * @param pole which of that breaker's poles, from 0
 * @param leg absent where not known
 */
public record BranchHot(BreakerId breaker, int pole, Optional<Leg> leg) {}
