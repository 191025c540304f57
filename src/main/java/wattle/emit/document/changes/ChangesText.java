package wattle.emit.document.changes;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import wattle.compare.Alike;
import wattle.compare.Comparison;
import wattle.compare.Consequences;
import wattle.compare.Gap;
import wattle.compare.Measure;
import wattle.emit.media.text.DisplayWidth;
import wattle.emit.media.text.VisibleText;
import wattle.finding.Finding;

/** A comparison for a terminal: one line a change, then what the changes come to. */
final class ChangesText {
  private ChangesText() {}

  /** Empty where nothing differs. */
  static String of(Comparison comparison) {
    String headline = Headline.of(comparison);
    StringBuilder out = new StringBuilder(headline.isEmpty() ? "" : headline + "\n\n").append(changes(comparison));
    findings(out, "new finding: ", comparison.appeared());
    findings(out, "finding gone: ", comparison.gone());
    if (!comparison.isEmpty()) {
      consequences(out, comparison.consequences());
    }
    return out.toString();
  }

  /** The changes alone. */
  static String changes(Comparison comparison) {
    StringBuilder out = new StringBuilder();
    for (Alike change : comparison.alike()) {
      out.append(ChangeWords.sign(change.first())).append(' ').append(VisibleText.of(ChangeWords.sentence(change))).append('\n');
    }
    return out.toString();
  }

  private static void findings(StringBuilder out, String lead, List<Finding> findings) {
    Map<String, Integer> times = new LinkedHashMap<>();
    for (Finding finding : findings) {
      times.merge("! " + lead + finding.weight() + ": " + VisibleText.of(finding.told()) + " [" + finding.rule() + "]", 1,
          Integer::sum);
    }
    times.forEach((line, count) -> out.append(line).append(count > 1 ? " at " + count + " places" : "").append('\n'));
  }

  private static void consequences(StringBuilder out, Consequences consequences) {
    for (Measure.Topic topic : Measure.Topic.values()) {
      FigureWords.Rows rows = FigureWords.rows(topic, consequences.figures());
      if (!rows.shown().isEmpty()) {
        out.append('\n').append(topic.words()).append('\n');
        rows(out, rows.shown());
        if (rows.more() > 0) {
          out.append("  and ").append(rows.more()).append(" that differ less; --format json has them all\n");
        }
      }
    }
    if (!consequences.gaps().isEmpty()) {
      out.append("\nnot compared\n");
      for (Gap gap : consequences.gaps()) {
        out.append("  ").append(gap.later() ? "after" : "before").append(": ").append(VisibleText.of(gap.what() + ": " + gap.why()))
            .append('\n');
      }
    }
    if (!consequences.isEmpty()) {
      out.append('\n').append(Changes.AID).append('\n');
    }
  }

  private static void rows(StringBuilder out, List<FigureWords> rows) {
    int what = widest(rows, FigureWords::what);
    int before = widest(rows, FigureWords::before);
    int after = widest(rows, FigureWords::after);
    int difference = widest(rows, FigureWords::difference);
    for (FigureWords row : rows) {
      String line = "  " + VisibleText.of(row.what()) + pad(row.what(), what) + "  " + pad(row.before(), before) + row.before() + " -> "
          + pad(row.after(), after) + row.after() + "  " + pad(row.difference(), difference) + row.difference() + "  "
          + VisibleText.of(row.note());
      out.append(line.stripTrailing()).append('\n');
    }
  }

  private static int widest(List<FigureWords> rows, Function<FigureWords, String> cell) {
    return rows.stream().map(cell).mapToInt(c -> DisplayWidth.of(VisibleText.of(c))).max().orElse(0);
  }

  private static String pad(String cell, int width) {
    return " ".repeat(Math.max(0, width - DisplayWidth.of(VisibleText.of(cell))));
  }
}
