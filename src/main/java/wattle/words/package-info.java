/**
 * Things of a house in words, one wording each wherever they are read: breakers, surroundings, names with their labels, and
 * the caution that stands beside figures. Knows the model.
 */
package wattle.words;
