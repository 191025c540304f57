package wattle.emit.document.changes;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wattle.compare.Alike;
import wattle.compare.Change;
import wattle.compare.Comparison;
import wattle.compare.Consequences;
import wattle.compare.Measure;
import wattle.compare.Thing;
import wattle.emit.media.text.Escape;
import wattle.finding.Finding;

/** A comparison as Markdown: a list under a heading for each kind of thing, a table for each kind of figure. */
final class ChangesMarkdown {
  private ChangesMarkdown() {}

  static String of(Comparison comparison, String before, String after) {
    StringBuilder out = new StringBuilder("# " + Escape.markdown(before) + " to " + Escape.markdown(after) + "\n");
    if (comparison.isEmpty()) {
      return out.append("\nNothing of the house differs.\n").toString();
    }
    String headline = Headline.of(comparison);
    if (!headline.isEmpty()) {
      out.append('\n').append(headline).append('\n');
    }
    Thing.Kind kind = null;
    for (Alike alike : comparison.alike()) {
      Change change = alike.first();
      if (change.thing().kind() != kind) {
        kind = change.thing().kind();
        out.append("\n## ").append(kind.word()).append("\n\n");
      }
      out.append("- **").append(ChangeWords.verb(change)).append("** ").append(Escape.markdown(ChangeWords.sentence(alike))).append('\n');
    }
    findings(out, comparison.appeared(), comparison.gone());
    consequences(out, comparison.consequences());
    return out.toString();
  }

  private static void findings(StringBuilder out, List<Finding> appeared, List<Finding> gone) {
    if (!appeared.isEmpty() || !gone.isEmpty()) {
      out.append("\n## findings\n\n");
      Map<String, Integer> times = new LinkedHashMap<>();
      appeared.forEach(f -> times.merge(finding("new", f), 1, Integer::sum));
      gone.forEach(f -> times.merge(finding("gone", f), 1, Integer::sum));
      times.forEach((line, count) -> out.append(line).append(count > 1 ? " at " + count + " places" : "").append('\n'));
    }
  }

  private static String finding(String lead, Finding finding) {
    return "- **" + lead + "** " + Escape.markdown(finding.weight() + ": " + finding.told()) + " (`" + finding.rule() + "`)";
  }

  private static void consequences(StringBuilder out, Consequences consequences) {
    for (Measure.Topic topic : Measure.Topic.values()) {
      FigureWords.Rows rows = FigureWords.rows(topic, consequences.figures());
      if (!rows.shown().isEmpty()) {
        out.append("\n## ").append(topic.words()).append("\n\n| | before | after | difference | |\n| --- | ---: | ---: | ---: | --- |\n");
        rows.shown().forEach(row -> row(out, row));
        if (rows.more() > 0) {
          out.append("\nAnd ").append(rows.more()).append(" that differ less; `--format json` has them all.\n");
        }
      }
    }
    if (!consequences.gaps().isEmpty()) {
      out.append("\n## not compared\n\n");
      consequences.gaps().forEach(
          g -> out.append("- **").append(g.later() ? "after" : "before").append("** ").append(Escape.markdown(g.what() + ": " + g.why()))
              .append('\n'));
    }
    if (!consequences.isEmpty()) {
      out.append('\n').append(Changes.AID).append('\n');
    }
  }

  private static void row(StringBuilder out, FigureWords row) {
    out.append('|');
    for (String cell : List.of(row.what(), row.before(), row.after(), row.difference(), row.note())) {
      out.append(' ').append(Escape.markdown(cell)).append(" |");
    }
    out.append('\n');
  }
}
