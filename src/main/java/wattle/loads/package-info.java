/**
 * Connected loads: what each branch, panel and leg would draw with everything on. In: the model. Out: volt-amperes for
 * each leg. No demand factors; those are a matter of the load worksheets.
 */
package wattle.loads;
