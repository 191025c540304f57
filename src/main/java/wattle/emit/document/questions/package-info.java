/** Sheets of questions and their answer keys, as text and as pages. */
package wattle.emit.document.questions;
