/** The directory that hangs in a panel's door: what each handle is for, in plain words, where the handle stands. */
package wattle.emit.document.directory;
