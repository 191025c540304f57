/**
 * Leg balance: which slots the breakers of a panel could stand in so that its legs carry more nearly the same. In: the
 * model and its connected loads. Out: for each panel the loads before and after, the moves, and a statement of how good
 * they are. Entry: {@link wattle.balance.Balance}. Changes no text; see {@code wattle.edit.Renumbering} for that.
 */
package wattle.balance;
