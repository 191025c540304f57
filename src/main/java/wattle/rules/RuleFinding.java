package wattle.rules;

import java.util.Optional;
import wattle.finding.Finding;

/**
 * A finding of a rule, and what it is about.
 *
 * @param subject name of the thing, by which a plan may silence it; absent for a thing without a name
 */
public record RuleFinding(Finding finding, Optional<String> subject) {}
