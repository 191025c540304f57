package wattle.server;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.SelectionRange;
import wattle.syntax.Lexeme;
import wattle.syntax.LexemeReader;

/** What a selection grows to, step by step: the word, its statement, what stands in its block, the block with its head, the file. */
final class Selections {
  private Selections() {}

  /** For each position the smallest stretch of text around it; each knows the one around it. */
  static List<SelectionRange> of(Question question, List<Position> positions) {
    List<int[]> stretches = stretches(question);
    return positions.stream().map(p -> at(question, question.offset(p), stretches)).toList();
  }

  private static SelectionRange at(Question question, int offset, List<int[]> stretches) {
    SelectionRange around = null;
    int[] last = {-1, -1};
    for (int[] stretch : stretches.stream().filter(s -> s[0] <= offset && offset <= s[1])
        .sorted(Comparator.comparingInt((int[] s) -> s[0] - s[1])).toList()) {
      boolean inside = around == null || stretch[0] >= last[0] && stretch[1] <= last[1] && stretch[1] - stretch[0] < last[1] - last[0];
      if (inside) {
        around = new SelectionRange(question.lines().range(stretch[0], stretch[1]), around);
        last = stretch;
      }
    }
    return around;
  }

  /** Start and end of everything that may be selected as one. */
  private static List<int[]> stretches(Question question) {
    List<int[]> stretches = new ArrayList<>();
    stretches.add(new int[]{0, question.source().text().length()});
    Deque<int[]> open = new ArrayDeque<>(); // where the head starts, and where the block opens
    int statement = -1;
    int end = -1;
    for (Lexeme lexeme : LexemeReader.read(question.source()).value()) {
      int from = lexeme.span().start();
      int to = lexeme.span().end();
      if (lexeme.kind() == Lexeme.Kind.LINE_END || lexeme.text().equals("}")) {
        add(stretches, statement, end);
        statement = -1;
      }
      if (lexeme.kind() == Lexeme.Kind.LINE_END) {
        continue;
      }
      stretches.add(new int[]{from, to});
      if (lexeme.text().equals("{")) {
        open.push(new int[]{statement < 0 ? from : statement, to});
        statement = -1;
      } else if (lexeme.text().equals("}") && !open.isEmpty()) {
        int[] block = open.pop();
        add(stretches, block[1], from);
        add(stretches, block[0], to);
      } else if (lexeme.kind() != Lexeme.Kind.COMMENT) {
        statement = statement < 0 ? from : statement;
        end = to;
      }
    }
    add(stretches, statement, end);
    return stretches;
  }

  private static void add(List<int[]> stretches, int from, int to) {
    if (from >= 0 && to > from) {
      stretches.add(new int[]{from, to});
    }
  }
}
