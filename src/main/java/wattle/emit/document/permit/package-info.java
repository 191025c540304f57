/** The summary that goes to the permit office: what is asked for, what was checked, what was silenced and why. */
package wattle.emit.document.permit;
