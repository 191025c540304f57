package wattle.edit;

import java.util.ArrayList;
import java.util.List;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.syntax.Lexeme;
import wattle.syntax.Lexeme.Kind;
import wattle.syntax.LexemeReader;

/**
 * Sets a plan in order without changing what it says. Lines stay lines and keep their order; within them:
 *
 * <ol>
 *   <li>{@link FormattedLine} gives every pair of tokens the space that belongs between them;
 *   <li>{@link Aligner} puts the columns of neighbouring slot lines, devices and comments under each other, and a fork of
 *       a branch under the box it starts from;
 *   <li>of several empty lines one is kept, and none at the edges of a block.
 * </ol>
 *
 * A file that the parser cannot read in full is left as it is: what is not understood is not touched.
 */
public final class Formatter {
  private Formatter() {}

  /** The text in order, with {@code \n} as its line end; the text itself where it has findings. */
  public static Checked<String> format(Source source) {
    Checked<List<Lexeme>> read = LexemeReader.read(source);
    List<Finding> findings = read.findings();
    if (!findings.isEmpty()) {
      return new Checked<>(source.text(), findings);
    }
    List<FormattedLine> lines = lines(read.value());
    alignBetweenRules(lines);
    StringBuilder text = new StringBuilder();
    lines.forEach(l -> text.append(l.text()).append('\n'));
    return new Checked<>(text.toString(), List.of());
  }

  private static List<FormattedLine> lines(List<Lexeme> lexemes) {
    List<FormattedLine> lines = new ArrayList<>();
    List<Lexeme> current = new ArrayList<>();
    int depth = 0;
    for (Lexeme lexeme : lexemes) {
      if (lexeme.kind() != Kind.LINE_END) {
        current.add(lexeme);
        continue;
      }
      depth = addLine(lines, current, depth);
      current = new ArrayList<>();
    }
    addLine(lines, current, depth);
    while (!lines.isEmpty() && lines.get(lines.size() - 1).isEmpty()) {
      lines.remove(lines.size() - 1);
    }
    return lines;
  }

  /** Rules keep the layout that their writer gave them; what stands between them is put in columns. */
  private static void alignBetweenRules(List<FormattedLine> lines) {
    int start = 0;
    for (int i = 0; i <= lines.size(); i++) {
      if (i == lines.size() || lines.get(i).isAsWritten()) {
        new Aligner(lines.subList(start, i)).align();
        start = i + 1;
      }
    }
  }

  private static int addLine(List<FormattedLine> lines, List<Lexeme> tokens, int depth) {
    boolean closes = !tokens.isEmpty() && tokens.get(0).text().equals("}");
    FormattedLine before = lines.isEmpty() ? null : lines.get(lines.size() - 1);
    boolean inRule = depth == 0 ? startsRule(tokens) : before != null && before.isAsWritten();
    FormattedLine line = inRule ? FormattedLine.asWritten(tokens) : new FormattedLine(tokens, closes ? depth - 1 : depth);
    if (line.isEmpty()) {
      if (before != null && !before.isEmpty() && !before.opensBlock()) {
        lines.add(line);
      }
      return depth;
    }
    if (closes && before != null && before.isEmpty()) {
      lines.remove(lines.size() - 1);
    }
    lines.add(line);
    for (Lexeme token : tokens) {
      depth += token.text().equals("{") ? 1 : token.text().equals("}") ? -1 : 0;
    }
    return Math.max(0, depth);
  }

  private static boolean startsRule(List<Lexeme> tokens) {
    return !tokens.isEmpty() && tokens.get(0).text().equals("rule");
  }
}
