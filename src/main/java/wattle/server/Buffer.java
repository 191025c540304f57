package wattle.server;

import java.util.List;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;

/**
 * A text that an editor holds open.
 *
 * @param uri the editor's own name of it, which answers must use
 * @param version as counted by the editor
 * @param lines the text and where its lines start
 */
record Buffer(String uri, int version, LineIndex lines) {
  Buffer(String uri, int version, String text) {
    this(uri, version, new LineIndex(text));
  }

  String text() {
    return lines.text();
  }

  /** The text after changes, each of which speaks of the text that the one before it left. */
  Buffer changed(int newVersion, List<TextDocumentContentChangeEvent> changes) {
    LineIndex now = lines;
    for (TextDocumentContentChangeEvent change : changes) {
      if (change.getRange() == null) {
        now = new LineIndex(change.getText());
        continue;
      }
      int start = now.offset(change.getRange().getStart());
      int end = Math.max(start, now.offset(change.getRange().getEnd()));
      now = now.with(start, end, change.getText());
    }
    return new Buffer(uri, newVersion, now);
  }
}
