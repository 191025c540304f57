/** Box fill: how much of each box its conductors, devices, clamps and grounds take. In: the model and the library's tables. */
package wattle.boxes;
