package wattle.emit.document.changes;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.OptionalDouble;
import wattle.compare.Change;
import wattle.compare.Comparison;
import wattle.compare.Consequence;
import wattle.compare.Figure;
import wattle.compare.Gap;
import wattle.emit.media.text.Json;
import wattle.emit.media.unfolded.StepsJson;
import wattle.finding.Finding;

/** A comparison for programs, by {@code schema/changes.schema.json}; every figure with the steps that led to it. */
final class ChangesJson {
  /** Version of the format; it grows when a reader would have to change. */
  private static final int VERSION = 2;

  private ChangesJson() {}

  static String of(Comparison comparison, String before, String after) {
    ObjectNode root = Json.document("wattle-changes", VERSION).put("before", before).put("after", after);
    ArrayNode changes = root.putArray("changes");
    comparison.changes().forEach(c -> change(changes.addObject(), c));
    findings(root.putArray("appeared"), comparison.appeared());
    findings(root.putArray("gone"), comparison.gone());
    ArrayNode figures = root.putArray("consequences");
    ArrayNode gaps = root.putArray("gaps");
    StepsJson steps = new StepsJson(root.putArray("steps"));
    comparison.consequences().figures().forEach(c -> consequence(figures.addObject(), c, steps));
    comparison.consequences().gaps().forEach(g -> gap(gaps.addObject(), g));
    return Json.text(root);
  }

  private static void change(ObjectNode node, Change change) {
    node.put("kind", change.thing().kind().word()).put("name", change.thing().name()).put("change", ChangeWords.verb(change));
    if (change instanceof Change.Added added) {
      added.facts().forEach(node.putArray("facts")::add);
    } else if (change instanceof Change.Removed removed) {
      removed.facts().forEach(node.putArray("facts")::add);
    } else if (change instanceof Change.Renamed renamed) {
      node.put("formerly", renamed.before());
    } else if (change instanceof Change.Changed changed) {
      node.put("property", changed.property()).put("before", changed.before()).put("after", changed.after());
    } else {
      throw new AssertionError(change);
    }
  }

  private static void findings(ArrayNode array, List<Finding> findings) {
    for (Finding finding : findings) {
      ObjectNode node = array.addObject();
      node.put("rule", finding.rule()).put("severity", finding.severity().toString()).put("headline", finding.told());
      finding.ofNewWork().ifPresent(severity -> node.put("ifNew", severity.toString()));
      ArrayNode at = node.putArray("at");
      finding.each().stream().flatMap(f -> f.subject().stream()).distinct().forEach(at::add);
    }
  }

  private static void consequence(ObjectNode node, Consequence consequence, StepsJson steps) {
    node.put("topic", consequence.measure().topic().word());
    node.put("kind", consequence.measure().thing().kind().word()).put("name", consequence.measure().thing().name());
    if (!consequence.formerly().equals(consequence.measure().thing())) {
      node.put("formerly", consequence.formerly().name());
    }
    node.put("measure", consequence.measure().words()).put("unit", consequence.measure().unit().symbol());
    figure(node.putObject("before"), consequence.before(), consequence.shownBefore(), steps);
    figure(node.putObject("after"), consequence.after(), consequence.shownAfter(), steps);
    if (consequence.difference().isPresent() && Double.isFinite(consequence.difference().getAsDouble())) {
      node.put("difference", consequence.difference().getAsDouble());
    }
  }

  private static void figure(ObjectNode node, Figure figure, OptionalDouble shown, StepsJson steps) {
    if (figure instanceof Figure.Known known) {
      node.put("known", true);
      if (Double.isFinite(shown.orElseThrow())) {
        node.put("value", shown.getAsDouble());
      }
      if (!known.note().isEmpty()) {
        node.put("note", known.note());
      }
      node.put("derivation", steps.place(known.derivation()));
    } else if (figure instanceof Figure.Unknown unknown) {
      node.put("known", false).put("why", unknown.why());
    } else if (figure instanceof Figure.Absent) {
      node.put("known", false).put("why", "this plan has none");
    } else {
      throw new AssertionError(figure);
    }
  }

  private static void gap(ObjectNode node, Gap gap) {
    node.put("what", gap.what()).put("in", gap.later() ? "after" : "before").put("why", gap.why());
  }
}
