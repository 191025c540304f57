package wattle.emit.document.findings;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.ToIntFunction;
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
  static final String SCHEMA = "https://json.schemastore.org/sarif-2.1.0.json";
  static final String VERSION = "2.1.0";
  static final String TOOL = "Wattle";
  static final String BASES = "originalUriBaseIds";
  static final String COLUMNS = "unicodeCodePoints";

  private final SarifAddresses addresses;
  private final ToIntFunction<String> indexes;

  /** @param indexes of rules among those of the run, by name */
  SarifFindings(SarifAddresses addresses, ToIntFunction<String> indexes) {
    this.addresses = addresses;
    this.indexes = indexes;
  }

  /** The addresses that others are relative to. */
  void bases(ObjectNode run) {
    addresses.bases(run.putObject(BASES));
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
    log.put("$schema", SCHEMA);
    log.put("version", VERSION);
    ObjectNode run = log.putArray("runs").addObject();
    ObjectNode driver = run.putObject("tool").putObject("driver");
    driver.put("name", TOOL).put("version", toolVersion);
    List<String> rules = findings.stream().map(Finding::rule).distinct().sorted().toList();
    ArrayNode ruleNodes = driver.putArray("rules");
    rules.forEach(r -> ruleNodes.add(rule(r, words.get(r))));
    SarifFindings inRun = new SarifFindings(new SarifAddresses(Path.of(""), root), rules::indexOf);
    inRun.bases(run);
    run.put("columnKind", COLUMNS);
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
    findings.forEach(f -> results.add(inRun.result(f)));
    return Json.text(log);
  }

  /** @param words of the rule; null where none are written */
  static ObjectNode rule(String name, FindingWords words) {
    ObjectNode node = Json.object().put("id", name);
    if (words != null) {
      node.putObject("shortDescription").put("text", words.title());
      node.putObject("fullDescription").put("text", words.meaning());
      node.putObject("help").put("text", words.page());
      words.severity().ifPresent(s -> node.putObject("defaultConfiguration").put("level", level(s)));
    }
    return node;
  }

  ObjectNode result(Finding finding) {
    ObjectNode node = Json.object();
    node.put("ruleId", finding.rule());
    node.put("ruleIndex", indexes.applyAsInt(finding.rule()));
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
    return node;
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
