/**
 * A plan in an editor: the language server protocol over two streams. It holds the texts that are being edited, asks the
 * compiler about them and turns the answers into what editors understand; whatever it says of a house the compiler or a
 * computation has said. Positions of the protocol, lines and UTF-16 columns from 0, exist in this package only. Its one
 * entry is {@link wattle.server.LanguageServerProcess}.
 */
package wattle.server;
