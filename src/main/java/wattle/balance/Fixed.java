package wattle.balance;

import wattle.model.Breaker;

/**
 * A breaker that stays where it is, whatever the balance.
 *
 * @param why in a few words, such as {@code pinned}
 */
public record Fixed(Breaker breaker, String why) {}
