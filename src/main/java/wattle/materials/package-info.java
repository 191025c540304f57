/**
 * What has to be bought. In: the bound house and the limits of the library. Out: {@link wattle.materials.Materials}, one
 * line for each thing, each cable with the sum that gives its length. Only what is new counts: what exists is there, and
 * what is to be removed needs nothing.
 */
package wattle.materials;
