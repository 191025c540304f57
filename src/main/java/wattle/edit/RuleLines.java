package wattle.edit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.finding.Source;
import wattle.syntax.Lexeme;

/**
 * The lines of one rule: a clause a line, what goes on from the line above two columns further in, and the plans in it set
 * in order as plans. A sample that cannot be read, since that is what it is a sample of, is left as it is; so is one in which
 * a reject would no longer find its text.
 */
final class RuleLines {
  private static final int CLAUSE = 2;
  private static final int GOES_ON = 4;

  private final Source source;
  private final List<String> replaced;
  private final List<FormattedLine> lines = new ArrayList<>();

  private RuleLines(Source source, List<String> replaced) {
    this.source = source;
    this.replaced = replaced;
  }

  /** @param rule its lines as tokens, from the line that names it to the one that closes it */
  static List<FormattedLine> of(Source source, List<List<Lexeme>> rule) {
    RuleLines made = new RuleLines(source, replaced(rule));
    made.add(rule);
    return made.lines;
  }

  /** Texts of the sample that a reject puts another in the place of. */
  private static List<String> replaced(List<List<Lexeme>> rule) {
    return rule.stream()
        .filter(l -> l.size() > 2 && l.get(0).text().equals("reject") && l.get(1).kind() == Lexeme.Kind.TEXT)
        .map(l -> l.get(1).text().substring(1, l.get(1).text().length() - 1).replaceAll("\\\\(.)", "$1"))
        .toList();
  }

  private void add(List<List<Lexeme>> rule) {
    int last = rule.size() - 1;
    for (int i = 0; i <= last; i++) {
      List<Lexeme> line = rule.get(i);
      if (i == 0 || i == last && closes(line)) {
        put(FormattedLine.placed(line, 0));
        continue;
      }
      int end = endOfSample(rule, i);
      if (end > i) {
        sample(rule.subList(i, end + 1));
        i = end;
      } else {
        put(isSampleInOneLine(line) ? FormattedLine.asWritten(line, CLAUSE) : FormattedLine.placed(line, goesOn(line) ? GOES_ON : CLAUSE));
      }
    }
  }

  /** Of several empty lines one is kept, and none at the edges of a block. */
  private void put(FormattedLine line) {
    FormattedLine before = lines.isEmpty() ? null : lines.get(lines.size() - 1);
    if (line.isEmpty() && (before == null || before.isEmpty() || before.opensBlock())) {
      return;
    }
    if (before != null && before.isEmpty() && closes(line.tokens())) {
      lines.remove(lines.size() - 1);
    }
    lines.add(line);
  }

  private static boolean closes(List<Lexeme> line) {
    return !line.isEmpty() && line.get(0).text().equals("}");
  }

  private static boolean goesOn(List<Lexeme> line) {
    return !line.isEmpty()
        && (line.get(0).kind() == Lexeme.Kind.TEXT || List.of("and", "or", "then").contains(line.get(0).text()) || isEdit(line));
  }

  /** Whether a line is an edit of the fix before it: no clause has such a second token. */
  private static boolean isEdit(List<Lexeme> line) {
    return line.size() > 1 && List.of(".", "with", "without").contains(line.get(1).text());
  }

  private static boolean isSample(List<Lexeme> line) {
    return !line.isEmpty() && List.of("accept", "exception", "reject").contains(line.get(0).text());
  }

  private static boolean isSampleInOneLine(List<Lexeme> line) {
    return isSample(line) && line.stream().anyMatch(t -> t.text().equals("{"));
  }

  /** Index of the line that closes the sample which a line opens; that line itself for every other. */
  private static int endOfSample(List<List<Lexeme>> rule, int from) {
    if (!isSample(rule.get(from))) {
      return from;
    }
    int depth = 0;
    for (int i = from; i < rule.size(); i++) {
      depth += Formatter.depthOf(rule.get(i));
      if (depth == 0) {
        return i;
      }
    }
    return from;
  }

  private void sample(List<List<Lexeme>> sample) {
    List<Lexeme> first = sample.get(0);
    List<Lexeme> last = sample.get(sample.size() - 1);
    Optional<List<FormattedLine>> inner = new FormattedLine(first, 0).opensBlock() && closes(last)
        ? plan(sample.subList(1, sample.size() - 1))
        : Optional.empty();
    if (inner.isEmpty()) {
      sample.forEach(l -> put(FormattedLine.asWritten(l)));
      return;
    }
    put(FormattedLine.placed(first, CLAUSE));
    inner.get().forEach(l -> put(l.within(GOES_ON)));
    put(FormattedLine.placed(last, CLAUSE));
  }

  /** The lines of a plan within the rule, in order; absent where it cannot be read in full. */
  private Optional<List<FormattedLine>> plan(List<List<Lexeme>> lines) {
    List<Lexeme> tokens = lines.stream().flatMap(List::stream).toList();
    if (tokens.isEmpty()) {
      return Optional.of(List.of());
    }
    int from = tokens.get(0).span().start();
    int to = tokens.get(tokens.size() - 1).span().end();
    String written = source.text().substring(from, to);
    return Formatter.lines(new Source(source.name(), written)).filter(inOrder -> keepsWhatIsReplaced(written, inOrder));
  }

  /** A reject finds its text by its letters and spaces: spaces that it counts on are not to be touched. */
  private boolean keepsWhatIsReplaced(String written, List<FormattedLine> inOrder) {
    String text = String.join("\n", inOrder.stream().map(FormattedLine::text).toList());
    return replaced.stream().allMatch(r -> count(written, r) == count(text, r));
  }

  private static int count(String text, String part) {
    int count = 0;
    for (int at = text.indexOf(part); at >= 0 && !part.isEmpty(); at = text.indexOf(part, at + 1)) {
      count++;
    }
    return count;
  }
}
