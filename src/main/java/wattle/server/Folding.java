package wattle.server;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeKind;
import wattle.syntax.Lexeme;
import wattle.syntax.LexemeReader;

/** Blocks between braces, and comments of several lines. */
final class Folding {
  private Folding() {}

  static List<FoldingRange> ranges(Question question) {
    List<FoldingRange> ranges = new ArrayList<>();
    Deque<Integer> open = new ArrayDeque<>();
    int firstComment = -2; // a line before any that could be next to it
    int lastComment = -2;
    boolean lineStart = true;
    for (Lexeme lexeme : LexemeReader.read(question.source()).value()) {
      int line = question.lines().position(lexeme.span().start()).getLine();
      if (lexeme.kind() == Lexeme.Kind.COMMENT && lineStart) {
        if (lastComment != line - 1) {
          addComment(ranges, firstComment, lastComment);
          firstComment = line;
        }
        lastComment = line;
      } else if (lexeme.text().equals("{")) {
        open.push(line);
      } else if (lexeme.text().equals("}") && !open.isEmpty()) {
        int from = open.pop();
        if (line > from + 1) {
          ranges.add(new FoldingRange(from, line - 1));
        }
      }
      lineStart = lexeme.kind() == Lexeme.Kind.LINE_END;
    }
    addComment(ranges, firstComment, lastComment);
    return ranges;
  }

  private static void addComment(List<FoldingRange> ranges, int first, int last) {
    if (last > first) {
      FoldingRange range = new FoldingRange(first, last);
      range.setKind(FoldingRangeKind.Comment);
      ranges.add(range);
    }
  }
}
