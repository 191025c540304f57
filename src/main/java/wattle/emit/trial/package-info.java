/** Tables of trials and of worst cases: the figures of {@code trials}, laid out for {@code emit.table}. */
package wattle.emit.trial;
