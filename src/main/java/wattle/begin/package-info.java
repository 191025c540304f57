/**
 * A first plan from a few answers, of a house or of several dwellings alike: text that compiles, in the circuits that a house of that
 * kind usually has. In: {@link wattle.begin.Answers}. Out: the text of a plan, not yet set in order. Entry: {@link
 * wattle.begin.FirstPlan}.
 */
package wattle.begin;
