package wattle.emit.document.findings;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import wattle.compiler.FindingWords;
import wattle.emit.media.text.Json;
import wattle.finding.Edit;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Mark;
import wattle.finding.Severity;
import wattle.finding.Span;

/** Findings by the OASIS standard SARIF 2.1.0, columns in code points. A silenced finding is a suppressed result. */
public final class SarifFindings {
  private final SarifAddresses addresses;
  private final List<String> rules;

  private SarifFindings(SarifAddresses addresses, List<String> rules) {
    this.addresses = addresses;
    this.rules = rules;
  }

  /**
   * The whole log, ending in a line end.
   *
   * @param judged what was judged of each plan, which properties of the invocation tell
   * @param assumed what was assumed of each plan; empty where nobody asked
   * @param words what is written of the kinds of findings, by name
   * @param root folder that addresses are relative to, as a rule that of the repository
   */
  public static String render(
      List<Finding> findings, List<Judged> judged, List<JsonFindings.OfPlan> assumed, Map<String, FindingWords> words, Path root,
      String toolVersion) {
    ObjectNode log = Json.object();
    log.put("$schema", "https://json.schemastore.org/sarif-2.1.0.json");
    log.put("version", "2.1.0");
    ObjectNode run = log.putArray("runs").addObject();
    ObjectNode driver = run.putObject("tool").putObject("driver");
    driver.put("name", "Wattle").put("version", toolVersion);
    List<String> rules = findings.stream().map(Finding::rule).distinct().sorted().toList();
    ArrayNode ruleNodes = driver.putArray("rules");
    rules.forEach(r -> rule(ruleNodes.addObject().put("id", r), words.get(r)));
    SarifFindings inRun = new SarifFindings(new SarifAddresses(Path.of(""), root), rules);
    inRun.addresses.bases(run);
    run.put("columnKind", "unicodeCodePoints");
    if (!judged.isEmpty()) {
      ObjectNode invocation = run.putArray("invocations").addObject().put("executionSuccessful", true);
      ObjectNode properties = invocation.putObject("properties");
      ArrayNode plans = properties.putArray("judged");
      judged.forEach(j -> JsonFindings.judged(plans.addObject(), j));
      if (!assumed.isEmpty()) {
        JsonFindings.assumed(properties.putArray("assumed"), assumed);
      }
    }
    ArrayNode results = run.putArray("results");
    findings.forEach(f -> inRun.result(results.addObject(), f));
    return Json.text(log);
  }

  private static void rule(ObjectNode node, FindingWords words) {
    if (words != null) {
      node.putObject("shortDescription").put("text", words.title());
      node.putObject("fullDescription").put("text", words.meaning());
      node.putObject("help").put("text", words.page());
      words.severity().ifPresent(s -> node.putObject("defaultConfiguration").put("level", level(s)));
    }
  }

  private void result(ObjectNode node, Finding finding) {
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
    node.putObject("partialFingerprints").put("ofSubject/v1", fingerprint(finding));
    finding.ofNewWork().ifPresent(severity -> node.putObject("properties").put("ifNew", severity.toString()));
    finding
        .silenced()
        .ifPresent(why -> node.putArray("suppressions").addObject().put("kind", "inSource").put("justification", why));
  }

  /** The same for the same fault of the same thing, whatever its line and its figures are by now. */
  private static String fingerprint(Finding finding) {
    String about = finding.subject().orElseGet(finding::withoutFigures);
    String file = finding.place().map(m -> m.span().source().name()).map(n -> n.substring(n.lastIndexOf('/') + 1)).orElse("");
    return finding.rule() + ":" + file + ":" + about;
  }

  private static String level(Severity severity) {
    return switch (severity) {
      case ERROR -> "error";
      case WARNING -> "warning";
      case ADVICE -> "note";
    };
  }

  private void location(ObjectNode node, Mark mark) {
    ObjectNode physical = node.putObject("physicalLocation");
    addresses.address(physical, mark.span());
    region(physical.putObject("region"), mark.span());
    if (!mark.words().isEmpty()) {
      node.putObject("message").put("text", mark.words());
    }
  }

  private void fix(ObjectNode node, Fix fix) {
    node.putObject("description").put("text", fix.order());
    ArrayNode changes = node.putArray("artifactChanges");
    for (Edit edit : fix.edits()) {
      ObjectNode change = changes.addObject();
      addresses.address(change, edit.span());
      ObjectNode replacement = change.putArray("replacements").addObject();
      region(replacement.putObject("deletedRegion"), edit.span());
      replacement.putObject("insertedContent").put("text", edit.text());
    }
  }

  private static void region(ObjectNode node, Span span) {
    node.put("startLine", span.line()).put("startColumn", span.column());
    node.put("endLine", span.source().lineOf(span.end())).put("endColumn", span.source().columnOf(span.end()));
  }
}
