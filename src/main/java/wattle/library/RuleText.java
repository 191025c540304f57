package wattle.library;

import wattle.syntax.Tree;

/**
 * A rule as a library holds it, not yet checked.
 *
 * @param pack the pack of the standard library that it is of, or the file beside the plan
 */
public record RuleText(String pack, Tree.Rule tree) {}
