package wattle.emit.document.findings;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import wattle.emit.media.text.Json;
import wattle.finding.Edit;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Mark;
import wattle.finding.Severity;
import wattle.finding.Span;

/** Findings by the OASIS standard SARIF 2.1.0, columns in code points. A silenced finding is a suppressed result. */
public final class SarifFindings {
  private SarifFindings() {}

  /** The whole log, ending in a line end. */
  public static String render(List<Finding> findings, String toolVersion) {
    return render(findings, List.of(), toolVersion);
  }

  /** @param judged what was judged of each plan, which properties of the invocation tell */
  public static String render(List<Finding> findings, List<Judged> judged, String toolVersion) {
    ObjectNode root = Json.object();
    root.put("$schema", "https://json.schemastore.org/sarif-2.1.0.json");
    root.put("version", "2.1.0");
    ObjectNode run = root.putArray("runs").addObject();
    ObjectNode driver = run.putObject("tool").putObject("driver");
    driver.put("name", "Wattle").put("version", toolVersion);
    List<String> rules = findings.stream().map(Finding::rule).distinct().sorted().toList();
    ArrayNode ruleNodes = driver.putArray("rules");
    rules.forEach(r -> ruleNodes.addObject().put("id", r));
    run.put("columnKind", "unicodeCodePoints");
    if (!judged.isEmpty()) {
      ObjectNode invocation = run.putArray("invocations").addObject().put("executionSuccessful", true);
      ArrayNode plans = invocation.putObject("properties").putArray("judged");
      judged.forEach(j -> JsonFindings.judged(plans.addObject(), j));
    }
    ArrayNode results = run.putArray("results");
    findings.forEach(f -> result(results.addObject(), f, rules));
    return Json.text(root);
  }

  private static void result(ObjectNode node, Finding finding, List<String> rules) {
    node.put("ruleId", finding.rule());
    node.put("ruleIndex", rules.indexOf(finding.rule()));
    node.put("level", level(finding.severity()));
    String reason = finding.reason().isEmpty() ? "" : ". " + finding.reason();
    node.putObject("message").put("text", finding.told() + reason);
    if (finding.place().isPresent()) {
      ArrayNode locations = node.putArray("locations");
      finding.everywhere().forEach(mark -> location(locations.addObject(), mark));
    }
    List<Mark> clashes = finding.relatedEverywhere();
    if (!clashes.isEmpty()) {
      ArrayNode related = node.putArray("relatedLocations");
      clashes.forEach(m -> location(related.addObject(), m));
    }
    List<Fix> edited = finding.fixesEverywhere().stream().filter(f -> !f.edits().isEmpty()).toList();
    if (!edited.isEmpty()) {
      ArrayNode fixes = node.putArray("fixes");
      edited.forEach(f -> fix(fixes.addObject(), f));
    }
    finding.ofNewWork().ifPresent(severity -> node.putObject("properties").put("ifNew", severity.toString()));
    finding
        .silenced()
        .ifPresent(why -> node.putArray("suppressions").addObject().put("kind", "inSource").put("justification", why));
  }

  private static String level(Severity severity) {
    return switch (severity) {
      case ERROR -> "error";
      case WARNING -> "warning";
      case ADVICE -> "note";
    };
  }

  private static void location(ObjectNode node, Mark mark) {
    ObjectNode physical = node.putObject("physicalLocation");
    physical.putObject("artifactLocation").put("uri", uri(mark.span()));
    region(physical.putObject("region"), mark.span());
    if (!mark.words().isEmpty()) {
      node.putObject("message").put("text", mark.words());
    }
  }

  private static void fix(ObjectNode node, Fix fix) {
    node.putObject("description").put("text", fix.order());
    ArrayNode changes = node.putArray("artifactChanges");
    for (Edit edit : fix.edits()) {
      ObjectNode change = changes.addObject();
      change.putObject("artifactLocation").put("uri", uri(edit.span()));
      ObjectNode replacement = change.putArray("replacements").addObject();
      region(replacement.putObject("deletedRegion"), edit.span());
      replacement.putObject("insertedContent").put("text", edit.text());
    }
  }

  private static void region(ObjectNode node, Span span) {
    node.put("startLine", span.line()).put("startColumn", span.column());
    node.put("endLine", span.source().lineOf(span.end())).put("endColumn", span.source().columnOf(span.end()));
  }

  private static String uri(Span span) {
    try {
      return new java.net.URI(null, null, span.source().name().replace('\\', '/'), null).toASCIIString();
    } catch (java.net.URISyntaxException e) {
      throw new IllegalStateException("a file name that is no path: " + span.source().name(), e);
    }
  }
}
