/**
 * What is measured when the work is done. In: the bound house, the library's limits, the network's voltages. Out:
 * {@link wattle.acceptance.Measurements}, each with what is expected; and a filled sheet read back, with a finding for each
 * reading that deviates.
 */
package wattle.acceptance;
