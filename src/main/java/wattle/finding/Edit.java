package wattle.finding;

/** The text that takes the place of a span; an empty span inserts, an empty text deletes. */
public record Edit(Span span, String text) {}
