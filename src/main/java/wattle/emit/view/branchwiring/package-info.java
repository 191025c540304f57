/**
 * The wiring of one branch, box by box, for the person who joins the wires. In: the house and the name of a branch. Out:
 * a plate of placed shapes. What a screw is joined to follows from the roles of the conductors that come into its box.
 */
package wattle.emit.view.branchwiring;
