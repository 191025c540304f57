package wattle.server;

import java.util.List;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;

/**
 * A text that an editor holds open.
 *
 * @param uri the editor's own name of it, which answers must use
 * @param version as counted by the editor
 */
record Buffer(String uri, int version, String text) {
  /** The text after changes, each of which speaks of the text that the one before it left. */
  Buffer changed(int newVersion, List<TextDocumentContentChangeEvent> changes) {
    String now = text;
    for (TextDocumentContentChangeEvent change : changes) {
      if (change.getRange() == null) {
        now = change.getText();
        continue;
      }
      LineIndex lines = new LineIndex(now);
      int start = lines.offset(change.getRange().getStart());
      int end = Math.max(start, lines.offset(change.getRange().getEnd()));
      now = now.substring(0, start) + change.getText() + now.substring(end);
    }
    return new Buffer(uri, newVersion, now);
  }
}
