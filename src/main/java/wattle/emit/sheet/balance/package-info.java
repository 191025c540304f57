/** Proposals of leg balance as tables: {@link wattle.emit.sheet.balance.BalanceSheets}. */
package wattle.emit.sheet.balance;
