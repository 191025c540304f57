/** Proposals of leg balance as tables: {@link wattle.emit.balance.BalanceSheets}. */
package wattle.emit.balance;
