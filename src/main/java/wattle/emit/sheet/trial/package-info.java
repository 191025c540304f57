/** Tables of trials and of worst cases: the figures of {@code trials}, laid out for {@code emit.media.table}. */
package wattle.emit.sheet.trial;
