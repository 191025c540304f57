package wattle.emit.changes;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import wattle.compare.Change;
import wattle.compare.Comparison;
import wattle.compare.Thing;
import wattle.emit.text.Json;
import wattle.finding.Finding;

/** Renders comparisons. Added is {@code +}, removed {@code -}, changed {@code ~}, renamed {@code =}. */
public final class Changes {
  private static final int VERSION = 1;

  private Changes() {}

  /** One line a change; empty where nothing differs. */
  public static String text(Comparison comparison) {
    StringBuilder out = new StringBuilder();
    for (Change change : comparison.changes()) {
      out.append(sign(change)).append(' ').append(sentence(change)).append('\n');
    }
    findings(out, "new finding: ", comparison.appeared());
    findings(out, "finding gone: ", comparison.gone());
    return out.toString();
  }

  private static void findings(StringBuilder out, String lead, List<Finding> findings) {
    for (Finding finding : findings) {
      out.append("! ").append(lead).append(finding.severity()).append(": ").append(finding.headline()).append(" [")
          .append(finding.rule()).append("]\n");
    }
  }

  private static char sign(Change change) {
    return change instanceof Change.Added ? '+' : change instanceof Change.Removed ? '-' : change instanceof Change.Renamed ? '=' : '~';
  }

  private static String sentence(Change change) {
    if (change instanceof Change.Added added) {
      return added.thing() + facts(added.facts());
    }
    if (change instanceof Change.Removed removed) {
      return removed.thing() + facts(removed.facts());
    }
    if (change instanceof Change.Renamed renamed) {
      return renamed.thing() + ", formerly " + renamed.before();
    }
    if (change instanceof Change.Changed changed) {
      return changed.thing() + ": " + changed.property() + " " + value(changed.before()) + " -> " + value(changed.after());
    }
    throw new AssertionError(change);
  }

  private static String facts(List<String> facts) {
    return facts.isEmpty() ? "" : " (" + String.join(", ", facts) + ")";
  }

  private static String value(String value) {
    return value.isEmpty() ? "none" : value;
  }

  /** The same as a Markdown list with a heading for each kind of thing. */
  public static String markdown(Comparison comparison, String before, String after) {
    StringBuilder out = new StringBuilder("# " + escape(before) + " to " + escape(after) + "\n");
    Thing.Kind kind = null;
    for (Change change : comparison.changes()) {
      if (change.thing().kind() != kind) {
        kind = change.thing().kind();
        out.append("\n## ").append(kind.word()).append("\n\n");
      }
      String word = change instanceof Change.Added ? "added" : change instanceof Change.Removed ? "removed" : change instanceof Change.Renamed ? "renamed" : "changed";
      out.append("- **").append(word).append("** ").append(escape(sentence(change))).append('\n');
    }
    List<Finding> appeared = comparison.appeared();
    List<Finding> gone = comparison.gone();
    if (!appeared.isEmpty() || !gone.isEmpty()) {
      out.append("\n## findings\n\n");
      appeared.forEach(f -> out.append("- **new** ").append(escape(f.severity() + ": " + f.headline())).append('\n'));
      gone.forEach(f -> out.append("- **gone** ").append(escape(f.severity() + ": " + f.headline())).append('\n'));
    }
    return out.toString();
  }

  private static String escape(String text) {
    return text.replaceAll("([\\\\`*_\\[\\]<>|#])", "\\\\$1").replace("\n", " ");
  }

  /** The same for programs. */
  public static String json(Comparison comparison, String before, String after) {
    ObjectNode root = Json.document("wattle-changes", VERSION).put("before", before).put("after", after);
    ArrayNode changes = root.putArray("changes");
    for (Change change : comparison.changes()) {
      ObjectNode node = changes.addObject();
      node.put("kind", change.thing().kind().word()).put("name", change.thing().name());
      if (change instanceof Change.Added added) {
        node.put("change", "added");
        added.facts().forEach(node.putArray("facts")::add);
      } else if (change instanceof Change.Removed removed) {
        node.put("change", "removed");
        removed.facts().forEach(node.putArray("facts")::add);
      } else if (change instanceof Change.Renamed renamed) {
        node.put("change", "renamed").put("formerly", renamed.before());
      } else if (change instanceof Change.Changed changed) {
        node.put("change", "changed").put("property", changed.property()).put("before", changed.before()).put("after", changed.after());
      } else {
        throw new AssertionError(change);
      }
    }
    addFindings(root.putArray("appeared"), comparison.appeared());
    addFindings(root.putArray("gone"), comparison.gone());
    return Json.text(root);
  }

  private static void addFindings(ArrayNode array, List<Finding> findings) {
    findings.forEach(f -> array.addObject().put("rule", f.rule()).put("severity", f.severity().toString()).put("headline", f.headline()));
  }

  /** A whole plan, one property a line, for tools that compare texts. */
  public static String description(SortedMap<Thing, Map<String, String>> things) {
    List<String> lines = new ArrayList<>();
    things.forEach((thing, properties) -> {
      lines.add(thing.toString());
      properties.forEach((name, value) -> lines.add("  " + name + ": " + value.replace("\n", "\\n")));
    });
    return String.join("\n", lines) + "\n";
  }
}
