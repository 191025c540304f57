/**
 * Text to tree, and back to places in the text: one {@link wattle.finding.Source} in, a {@link wattle.syntax.PlanTree}
 * and findings out. The grammar in {@code grammar/Wattle.g4} is the only definition of the notation. Knows {@code
 * finding} and nothing else of the project.
 */
package wattle.syntax;
