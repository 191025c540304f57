package wattle.server;

import com.github.difflib.DiffUtils;
import com.github.difflib.patch.AbstractDelta;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextEdit;
import wattle.edit.Formatter;
import wattle.finding.Checked;

/** A document set in order. */
final class Formatting {
  private Formatting() {}

  /** The same for some lines alone: of the lines that change those are left as they are which lie outside. */
  static List<TextEdit> edits(Question question, Range range) {
    String before = question.source().text();
    Checked<String> formatted = Formatter.format(question.source());
    if (!formatted.findings().isEmpty()) {
      return List.of();
    }
    List<String> old = List.of(before.split("(?<=\n)", -1));
    List<String> now = List.of(formatted.value().split("(?<=\n)", -1));
    List<TextEdit> edits = new ArrayList<>();
    for (AbstractDelta<String> delta : DiffUtils.diff(old, now).getDeltas()) {
      int from = delta.getSource().getPosition();
      int to = from + delta.getSource().size();
      if (from >= range.getStart().getLine() && to - 1 <= range.getEnd().getLine()) {
        int start = old.subList(0, from).stream().mapToInt(String::length).sum();
        int end = start + delta.getSource().getLines().stream().mapToInt(String::length).sum();
        edits.add(new TextEdit(question.lines().range(start, end), String.join("", delta.getTarget().getLines())));
      }
    }
    return edits;
  }

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
