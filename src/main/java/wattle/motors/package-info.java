/**
 * Currents of motors: at full load by their horsepower, and at the start by nameplate or code letter; of welders by their duty
 * cycle.
 */
package wattle.motors;
