/** The run of all phases, for the command line and for servers: the one façade. */
package wattle.compiler;
