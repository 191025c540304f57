/** Currents of motors: at full load by their horsepower, and at the start by nameplate or code letter. */
package wattle.motors;
