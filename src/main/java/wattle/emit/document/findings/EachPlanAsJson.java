package wattle.emit.document.findings;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import wattle.emit.media.text.Json;
import wattle.emit.media.text.JsonStream;

/** Findings of many plans as the document that {@link JsonFindings} makes of one. */
public final class EachPlanAsJson implements OfEachPlan {
  private final JsonStream json;
  private final AtTheEnd atTheEnd = new AtTheEnd();

  public EachPlanAsJson(PrintWriter out) {
    json = new JsonStream(out);
    json.write(g -> {
      g.writeStartObject();
      g.writeStringField("format", JsonFindings.FORMAT);
      g.writeNumberField("version", JsonFindings.VERSION);
      g.writeArrayFieldStart("findings");
    });
  }

  @Override
  public void plan(Told told) {
    told.facts().forEach(f -> {
      ObjectNode node = Json.object();
      JsonFindings.finding(node, f);
      json.value(node);
    });
    atTheEnd.add(told);
  }

  @Override
  public void end(boolean whole) {
    json.write(g -> g.writeEndArray());
    atTheEnd.write(json);
    json.write(g -> g.writeEndObject());
    json.end();
  }
}
