/** The command line: options in, the façade called, results out, one exit code. Nothing is computed here. */
package wattle.cli;
