package wattle.balance;

/**
 * What so many moves can reach.
 *
 * @param moves most moves allowed
 * @param difference least difference between the heaviest and the lightest leg that was found, in volt-amperes
 * @param bound no arrangement with so many moves has a smaller difference than this, in volt-amperes
 */
public record Step(int moves, double difference, double bound) {}
