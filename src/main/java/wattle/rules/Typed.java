package wattle.rules;

/** A term and the type of its value. */
record Typed(Type type, Term term) {}
