package wattle.finding;

/** A span with the few words that stand under it; the words may be empty. */
public record Mark(Span span, String words) {}
