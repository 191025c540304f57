package wattle.balance;

/**
 * How good a proposal is known to be.
 *
 * @param complete whether every arrangement was examined or excluded by a bound
 * @param mostMoves the arrangements meant are those of at most so many moves
 * @param bound none of them has a smaller difference than this, in volt-amperes
 * @param examined partial arrangements that were looked at one by one
 * @param resolution volt-amperes; differences closer than this count as equal
 */
public record Proof(boolean complete, int mostMoves, double bound, long examined, double resolution) {}
