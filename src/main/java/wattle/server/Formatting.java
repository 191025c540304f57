package wattle.server;

import java.util.List;
import org.eclipse.lsp4j.TextEdit;
import wattle.edit.Formatter;
import wattle.finding.Checked;

/** A document set in order. */
final class Formatting {
  private Formatting() {}

  /** One edit for the lines that change, so that the cursor stays where nothing does; none for a text with mistakes. */
  static List<TextEdit> edits(Question question) {
    String before = question.source().text();
    Checked<String> formatted = Formatter.format(question.source());
    if (!formatted.findings().isEmpty() || formatted.value().equals(before)) {
      return List.of();
    }
    String after = formatted.value();
    int most = Math.min(before.length(), after.length());
    int same = 0;
    while (same < most && before.charAt(same) == after.charAt(same)) {
      same++;
    }
    int start = before.lastIndexOf('\n', same - 1) + 1;
    int tail = 0;
    while (tail < most - start && before.charAt(before.length() - 1 - tail) == after.charAt(after.length() - 1 - tail)) {
      tail++;
    }
    int end = before.length() - tail;
    return List.of(new TextEdit(question.lines().range(start, end), after.substring(start, after.length() - tail)));
  }
}
