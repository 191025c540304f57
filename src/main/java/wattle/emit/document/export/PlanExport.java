package wattle.emit.document.export;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;
import java.util.function.Function;
import wattle.compiler.Compilation;
import wattle.emit.document.findings.JsonFindings;
import wattle.emit.document.findings.Judged;
import wattle.emit.media.text.Json;
import wattle.emit.sheet.schedule.RunFigures;
import wattle.model.House;
import wattle.words.Caution;

/**
 * A plan with all that follows from it, by {@code schema/plan.schema.json}. Things are listed in the order of the plan, each with the
 * name that the plan has for it; lengths are in meters and volumes in cubic inches whatever the plan is written in.
 */
public final class PlanExport {
  /** Version of the format; it grows when a reader would have to change. */
  public static final int VERSION = 1;

  private PlanExport() {}

  /** The document, ending in a line end. */
  public static String json(Compilation plan) {
    House house = plan.house();
    ObjectNode root = Json.document("wattle-plan", VERSION).put("caution", Caution.LONG);
    root.put("plan", plan.source().name());
    Members.text(root, "title", house.title());
    Members.text(root, "revision", house.revision());
    Members.words(root, "codes", house.codes());
    root.put("completeness", EnumWords.of(plan.completeness()));
    Members.words(root, "assumed", house.assumed());
    RunFigures runs = new RunFigures(house, plan.figures().conductors());
    SupplyJson supply = new SupplyJson(plan, runs);
    BranchJson branches = new BranchJson(plan, runs);
    RoomJson rooms = new RoomJson(plan);
    each(root, "dwellings", house.dwellings(), SupplyJson::dwelling);
    each(root, "services", house.services(), supply::service);
    each(root, "panels", house.panels(), supply::panel);
    each(root, "branches", house.branches(), branches::branch);
    each(root, "raceways", house.raceways(), RoomJson::raceway);
    each(root, "rooms", house.rooms(), RoomJson::room);
    each(root, "boxes", house.boxes(), rooms::box);
    each(root, "devices", house.devices(), rooms::device);
    ArrayNode findings = root.putArray("findings");
    plan.facts().forEach(f -> JsonFindings.finding(findings.addObject(), f));
    JsonFindings.judged(root.putObject("judged"), Judged.of(plan));
    return Json.text(root);
  }

  private static <T> void each(ObjectNode root, String key, Map<String, T> things, Function<T, ObjectNode> form) {
    ArrayNode array = root.putArray(key);
    things.values().forEach(t -> array.add(form.apply(t)));
  }
}
