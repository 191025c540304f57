package wattle.emit.document.findings;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wattle.compiler.FindingWords;
import wattle.emit.media.text.Json;
import wattle.emit.media.text.JsonStream;
import wattle.finding.Finding;

/**
 * Findings of many plans as one run of a SARIF log. Its results come first, since they are written plan by plan; rules stand in the
 * order in which they were met.
 */
public final class EachPlanAsSarif implements OfEachPlan {
  private final JsonStream json;
  private final SarifFindings run;
  private final String version;
  private final Map<String, Integer> rules = new LinkedHashMap<>();
  private final Map<String, FindingWords> own = new HashMap<>();
  private final AtTheEnd atTheEnd = new AtTheEnd();

  /** @param root folder that addresses are relative to */
  public EachPlanAsSarif(PrintWriter out, Path root, String toolVersion) {
    json = new JsonStream(out);
    version = toolVersion;
    run = new SarifFindings(new SarifAddresses(Path.of(""), root), rules::get);
    json.write(g -> {
      g.writeStartObject();
      g.writeStringField("$schema", SarifFindings.SCHEMA);
      g.writeStringField("version", SarifFindings.VERSION);
      g.writeArrayFieldStart("runs");
      g.writeStartObject();
      g.writeArrayFieldStart("results");
    });
  }

  @Override
  public void plan(Told told) {
    List<String> unseen = told.facts().stream().map(Finding::rule).distinct().filter(r -> !rules.containsKey(r)).toList();
    unseen.forEach(r -> rules.put(r, rules.size()));
    own.putAll(FindingWords.own(unseen, told.plan()));
    told.facts().forEach(f -> json.value(run.result(f)));
    atTheEnd.add(told);
  }

  @Override
  public void end(boolean whole) {
    json.write(g -> {
      g.writeEndArray();
      g.writeObjectFieldStart("tool");
      g.writeObjectFieldStart("driver");
      g.writeStringField("name", SarifFindings.TOOL);
      g.writeStringField("version", version);
      g.writeArrayFieldStart("rules");
    });
    // Words of the packs are long to read, so that they are read once, when it is known which are wanted.
    Map<String, FindingWords> words = FindingWords.of(rules.keySet(), List.of());
    words.putAll(own);
    rules.keySet().forEach(r -> json.value(SarifFindings.rule(r, words.get(r))));
    ObjectNode bases = Json.object();
    run.bases(bases);
    json.write(g -> {
      g.writeEndArray();
      g.writeEndObject();
      g.writeEndObject();
      g.writeFieldName(SarifFindings.BASES);
      g.writeTree(bases.get(SarifFindings.BASES));
      g.writeStringField("columnKind", SarifFindings.COLUMNS);
      g.writeArrayFieldStart("invocations");
      g.writeStartObject();
      g.writeBooleanField("executionSuccessful", whole);
      g.writeObjectFieldStart("properties");
    });
    atTheEnd.write(json);
    json.write(g -> {
      g.writeEndObject();
      g.writeEndObject();
      g.writeEndArray();
      g.writeEndObject();
      g.writeEndArray();
      g.writeEndObject();
    });
    json.end();
  }
}
