/**
 * Rules: text of the library to typed rules, and typed rules over a house to findings. In: the library's rule trees, the
 * model, the computations. Out: findings, silenced where the plan says so. What rules may speak of is the {@link
 * wattle.rules.Vocabulary}, and nothing else of the model is open to them.
 */
package wattle.rules;
