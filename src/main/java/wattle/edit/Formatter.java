package wattle.edit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.finding.Checked;
import wattle.finding.Source;
import wattle.finding.Span;
import wattle.syntax.Lexeme;
import wattle.syntax.Lexeme.Kind;
import wattle.syntax.LexemeReader;
import wattle.syntax.PlanParser;

/**
 * Sets a plan in order without changing what it says. Lines stay lines and keep their order; within them:
 *
 * <ol>
 *   <li>{@link FormattedLine} gives every pair of tokens the space that belongs between them;
 *   <li>{@link Aligner} puts the columns of neighboring slot lines, devices and comments under each other, and a fork of
 *       a branch under the box it starts from;
 *   <li>of several empty lines one is kept, and none at the edges of a block.
 * </ol>
 *
 * A file that the parser cannot read in full is left as it is: what is not understood is not touched.
 */
public final class Formatter {
  /**
   * Least characters that are set in order at a time. A long text is cut where a line outside of all blocks is empty, which no
   * column goes over: all processors have their share, and the tokens of a stretch are let go once its text is made.
   */
  private static final int STRETCH = 1 << 16;

  private Formatter() {}

  /** The text in order, with the line end of its first line; the text itself where it has findings. */
  public static Checked<String> format(Source source) {
    return format(source, STRETCH);
  }

  /** @param stretch least characters that are set in order at a time; no text depends on it */
  static Checked<String> format(Source source, int stretch) {
    String end = source.text().indexOf('\n') > 0 && source.text().charAt(source.text().indexOf('\n') - 1) == '\r' ? "\r\n" : "\n";
    List<Span> stretches = LexemeReader.stretches(source, stretch);
    List<StringBuilder> made = (stretches.size() > 1 ? stretches.parallelStream() : stretches.stream()).flatMap(s -> text(s, end).stream())
        .toList();
    if (made.size() < stretches.size()) {
      return new Checked<>(source.text(), PlanParser.parse(source).findings());
    }
    StringBuilder text = new StringBuilder(source.text().length());
    made.forEach(text::append);
    int length = text.length();
    while (length >= 2 * end.length() && text.lastIndexOf(end + end, length) == length - 2 * end.length()) {
      length -= end.length();
    }
    text.setLength(length);
    return new Checked<>(text.toString(), List.of());
  }

  /** A stretch in order; absent where it cannot be read in full. */
  private static Optional<StringBuilder> text(Span stretch, String end) {
    return LexemeReader.faultless(stretch).map(lexemes -> {
      StringBuilder text = new StringBuilder(stretch.end() - stretch.start());
      for (FormattedLine line : lines(stretch.source(), lexemes)) {
        line.write(text);
        text.append(end);
      }
      return text;
    });
  }

  /** The lines of a plan in order; absent where it cannot be read in full. */
  static Optional<List<FormattedLine>> lines(Source source) {
    return LexemeReader.faultless(source.span(0, source.text().length())).map(lexemes -> {
      List<FormattedLine> lines = lines(source, lexemes);
      while (!lines.isEmpty() && lines.get(lines.size() - 1).isEmpty()) {
        lines.remove(lines.size() - 1);
      }
      return lines;
    });
  }

  private static List<FormattedLine> lines(Source source, List<Lexeme> lexemes) {
    List<List<Lexeme>> written = written(lexemes);
    List<FormattedLine> lines = new ArrayList<>(written.size());
    int depth = 0;
    for (int i = 0; i < written.size(); i++) {
      int end = depth == 0 && startsRule(written.get(i)) ? endOfBlock(written, i) : i;
      if (end > i) {
        lines.addAll(RuleLines.of(source, written.subList(i, end + 1)));
        i = end;
      } else {
        depth = addLine(lines, written.get(i), depth);
      }
    }
    alignBetweenRules(lines);
    return lines;
  }

  /** The tokens line by line. */
  private static List<List<Lexeme>> written(List<Lexeme> lexemes) {
    List<List<Lexeme>> lines = new ArrayList<>();
    List<Lexeme> current = new ArrayList<>();
    for (Lexeme lexeme : lexemes) {
      if (lexeme.kind() == Kind.LINE_END) {
        lines.add(current);
        current = new ArrayList<>();
      } else {
        current.add(lexeme);
      }
    }
    lines.add(current);
    return lines;
  }

  /** The line that closes the block which a line opens; that line itself where it opens none. */
  private static int endOfBlock(List<List<Lexeme>> lines, int from) {
    int depth = 0;
    for (int i = from; i < lines.size(); i++) {
      depth += depthOf(lines.get(i));
      if (depth == 0 && (i > from || lines.get(i).stream().anyMatch(t -> t.text().equals("{")))) {
        return i;
      }
    }
    return from;
  }

  /** Blocks that a line opens, less those that it closes. */
  static int depthOf(List<Lexeme> line) {
    int depth = 0;
    for (Lexeme token : line) {
      depth += token.text().equals("{") ? 1 : token.text().equals("}") ? -1 : 0;
    }
    return depth;
  }

  /** The lines of rules have their places; what stands between them is put in columns. */
  private static void alignBetweenRules(List<FormattedLine> lines) {
    int start = 0;
    for (int i = 0; i <= lines.size(); i++) {
      if (i == lines.size() || lines.get(i).isPlaced()) {
        new Aligner(lines.subList(start, i)).align();
        start = i + 1;
      }
    }
  }

  private static int addLine(List<FormattedLine> lines, List<Lexeme> tokens, int depth) {
    boolean closes = !tokens.isEmpty() && tokens.get(0).text().equals("}");
    FormattedLine before = lines.isEmpty() ? null : lines.get(lines.size() - 1);
    FormattedLine line = new FormattedLine(tokens, closes ? depth - 1 : depth);
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
    return Math.max(0, depth + depthOf(tokens));
  }

  private static boolean startsRule(List<Lexeme> tokens) {
    return !tokens.isEmpty() && tokens.get(0).text().equals("rule");
  }
}
