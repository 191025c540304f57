package wattle.emit.document.findings;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import wattle.emit.media.text.Json;
import wattle.emit.sheet.figures.Assumptions;
import wattle.finding.Edit;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Mark;
import wattle.finding.Span;

/** Findings as JSON, by {@code schema/findings.schema.json}. Lines and columns are 1-based, columns in code points. */
public final class JsonFindings {
  /** Version of the format; it grows when a reader would have to change. */
  public static final int VERSION = 1;

  static final String FORMAT = "wattle-findings";

  private JsonFindings() {}

  /** The whole document, ending in a line end; of something else than plans, with no word on what was judged. */
  public static String render(List<Finding> findings) {
    return render(findings, List.of(), List.of());
  }

  /**
   * @param judged what was judged of each plan
   * @param assumed what was assumed of each plan, by its name; empty where nobody asked
   */
  public static String render(List<Finding> findings, List<Judged> judged, List<OfPlan> assumed) {
    ObjectNode root = Json.document(FORMAT, VERSION);
    ArrayNode array = root.putArray("findings");
    findings.forEach(f -> finding(array.addObject(), f));
    if (!judged.isEmpty()) {
      ArrayNode plans = root.putArray("judged");
      judged.forEach(j -> judged(plans.addObject(), j));
    }
    if (!assumed.isEmpty()) {
      assumed(root.putArray("assumed"), assumed);
    }
    return Json.text(root);
  }

  /** What was assumed of a plan. */
  public record OfPlan(String plan, List<Assumptions.Assumed> assumed) {}

  /** What was assumed of plans, in the same words in every format of machines. */
  static void assumed(ArrayNode array, List<OfPlan> plans) {
    for (OfPlan plan : plans) {
      for (Assumptions.Assumed assumed : plan.assumed()) {
        ObjectNode node = array.addObject().put("plan", plan.plan()).put("what", assumed.what());
        ArrayNode figures = node.putArray("figures");
        assumed.figures().forEach(figures::add);
      }
    }
  }

  /** What was judged of a plan, in the same words in every format of machines. */
  public static void judged(ObjectNode node, Judged judged) {
    ArrayNode codes = node.put("plan", judged.plan()).putArray("codes");
    judged.codes().forEach(codes::add);
    node.put("checked", judged.checked()).put("notKnown", judged.notKnown());
    ArrayNode unstated = node.putArray("unstated");
    judged.unstated().forEach(u -> {
      ObjectNode fact = unstated.addObject().put("of", u.kind().word()).put("fact", u.fact()).put("how", u.how());
      ArrayNode places = fact.putArray("places");
      u.places().forEach(places::add);
    });
    node.put("inDoubt", judged.inDoubt()).put("ifNew", judged.ifNew()).put("asNew", judged.survey());
  }

  /** One finding, in the same words in every document. */
  public static void finding(ObjectNode node, Finding finding) {
    node.put("rule", finding.rule());
    node.put("severity", finding.severity().toString());
    node.put("headline", finding.told());
    finding.place().ifPresent(mark -> mark(node.putObject("place"), mark));
    ArrayNode places = node.putArray("places");
    finding.each().forEach(f -> f.place().ifPresent(mark -> {
      ObjectNode place = places.addObject();
      f.subject().ifPresent(name -> place.put("name", name));
      mark(place, mark);
    }));
    ArrayNode related = node.putArray("related");
    finding.relatedEverywhere().forEach(m -> mark(related.addObject(), m));
    node.put("reason", finding.reason());
    ObjectNode figures = node.putObject("figures");
    finding.figures().forEach(figures::put);
    ArrayNode fixes = node.putArray("fixes");
    finding.fixesEverywhere().forEach(f -> fix(fixes.addObject(), f));
    finding.source().ifPresent(s -> node.put("source", s.toString()));
    finding.silenced().ifPresent(why -> node.put("silenced", why));
    finding.ofNewWork().ifPresent(severity -> node.put("ifNew", severity.toString()));
  }

  private static void fix(ObjectNode node, Fix fix) {
    node.put("order", fix.order());
    node.put("safe", fix.safety() == Fix.Safety.SAFE);
    ArrayNode edits = node.putArray("edits");
    for (Edit edit : fix.edits()) {
      ObjectNode each = edits.addObject();
      span(each, edit.span());
      each.put("text", edit.text());
    }
  }

  private static void mark(ObjectNode node, Mark mark) {
    span(node, mark.span());
    node.put("words", mark.words());
  }

  private static void span(ObjectNode node, Span span) {
    node.put("file", span.source().name());
    node.put("line", span.line());
    node.put("column", span.column());
    node.put("endLine", span.source().lineOf(span.end()));
    node.put("endColumn", span.source().columnOf(span.end()));
  }
}
