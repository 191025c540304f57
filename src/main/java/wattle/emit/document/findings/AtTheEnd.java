package wattle.emit.document.findings;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import wattle.emit.media.text.Json;
import wattle.emit.media.text.JsonStream;

/** What was judged and assumed of many plans, which documents for programs have behind the findings of all. */
final class AtTheEnd {
  private final PackedNodes judged = new PackedNodes();
  private final PackedNodes assumed = new PackedNodes();

  void add(OfEachPlan.Told told) {
    ObjectNode ofPlan = Json.object();
    JsonFindings.judged(ofPlan, told.judged());
    judged.add(ofPlan);
    ArrayNode list = Json.object().putArray("assumed");
    JsonFindings.assumed(list, told.assumed());
    list.forEach(n -> assumed.add((ObjectNode) n));
  }

  /** Writes them as members of the object that is open. */
  void write(JsonStream json) {
    array("judged", judged, json);
    if (!assumed.isEmpty()) {
      array("assumed", assumed, json);
    }
  }

  private static void array(String name, PackedNodes nodes, JsonStream json) {
    json.write(g -> g.writeArrayFieldStart(name));
    nodes.each(json::value);
    json.write(g -> g.writeEndArray());
  }
}
