package wattle.emit.view.panelfront;

/**
 * What a front tells of a breaker that is not simply on.
 *
 * @param words before its rating, such as {@code OPEN}
 * @param open whether it is off
 */
public record BreakerState(String words, boolean open) {}
