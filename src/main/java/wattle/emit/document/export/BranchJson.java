package wattle.emit.document.export;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.compiler.Compilation;
import wattle.emit.media.text.Json;
import wattle.emit.sheet.schedule.RunFigures;
import wattle.faults.FaultPoint;
import wattle.model.Branch;
import wattle.model.ConductorUse;
import wattle.model.Panel;
import wattle.model.Point;
import wattle.model.Role;
import wattle.model.Section;
import wattle.quantity.Units;
import wattle.trials.WorstCases;
import wattle.words.SurroundingsWords;

/** Branches: their hots, the points that they come to, the runs between, and the voltage that is left. */
final class BranchJson {
  private final Compilation plan;
  private final RunFigures runs;
  private final Map<String, List<WorstCases.VoltageCase>> voltages = new LinkedHashMap<>();
  private final Map<String, WorstCases.NeutralCase> neutrals = new LinkedHashMap<>();

  BranchJson(Compilation plan, RunFigures runs) {
    this.plan = plan;
    this.runs = runs;
    plan.figures().worst().voltages().forEach(c -> voltages.computeIfAbsent(c.branch(), b -> new ArrayList<>()).add(c));
    plan.figures().worst().neutrals().forEach(c -> neutrals.put(c.branch(), c));
  }

  ObjectNode branch(Branch branch) {
    ObjectNode node = Json.object().put("id", branch.name());
    Members.text(node, "label", branch.label());
    Members.text(node, "panel", branch.panel());
    Members.text(node, "kind", branch.kind());
    node.put("status", branch.status().word());
    ArrayNode hots = node.putArray("hots");
    branch.hots().forEach(h -> {
      ObjectNode hot = hots.addObject().put("breaker", h.breaker().toString()).put("pole", h.pole() + 1);
      h.leg().ifPresent(l -> hot.put("leg", l.name()));
    });
    node.set("wiring", WiringJson.wiring(branch.wiring()));
    Optional<Panel> panel = branch.panel().map(plan.house().panels()::get);
    panel.ifPresent(p -> SupplyJson.loads(node, plan.figures().loads().branch(branch.name()), p.system()));
    sharedNeutral(node, branch);
    points(node, branch);
    ArrayNode sections = node.putArray("runs");
    branch.sections().forEach(s -> sections.add(run(branch, s)));
    ArrayNode array = node.putArray("voltages");
    voltages.getOrDefault(branch.name(), List.of()).forEach(c -> voltage(array.addObject(), c));
    return node;
  }

  private void sharedNeutral(ObjectNode node, Branch branch) {
    WorstCases.NeutralCase neutral = neutrals.get(branch.name());
    if (neutral != null) {
      node.putObject("sharedNeutral").put("mostAmperes", neutral.worst().si()).put("statedLoadsAmperes", neutral.stated().si());
    }
  }

  private void points(ObjectNode node, Branch branch) {
    List<FaultPoint> faults = plan.figures().faults().branch(branch.name());
    ArrayNode array = node.putArray("points");
    for (int i = 0; i < branch.points().size(); i++) {
      Point point = branch.points().get(i);
      ObjectNode each = array.addObject();
      point.box().ifPresentOrElse(b -> each.put("box", b), () -> branch.panel().ifPresent(p -> each.put("panel", p)));
      Members.words(each, "devices", point.devices());
      each.put("wiredThrough", point.wiredThrough());
      if (i < faults.size()) {
        WiringJson.faults(each, faults.get(i));
      }
    }
  }

  private ObjectNode run(Branch branch, Section section) {
    ObjectNode node = Json.object().put("id", RunFigures.nameOf(branch, section)).put("from", RunFigures.pointOf(branch, section.from()))
        .put("to", RunFigures.pointOf(branch, section.to())).put("status", section.status().word());
    Members.figure(node, "lengthMeters", section.length(), Units.METER);
    node.put("laid", SurroundingsWords.of(section.surroundings()));
    node.set("wiring", WiringJson.wiring(section.wiring()));
    WiringJson.carried(node, runs.of(branch, section));
    ArrayNode conductors = node.putArray("conductors");
    section.conductors().forEach(c -> conductors.add(conductor(branch, c)));
    return node;
  }

  private static ObjectNode conductor(Branch branch, ConductorUse use) {
    return Json.object().put("color", use.wire().color()).put("size", use.wire().size().toString())
        .put("role", Role.text(use.role(), branch.hots())).put("reidentified", use.reidentified());
  }

  private static void voltage(ObjectNode node, WorstCases.VoltageCase voltage) {
    node.put("outlet", voltage.outlet()).put("nominalVolts", voltage.nominal().si());
    Members.derived(node, "fullLoadVolts", voltage.atFullLoad(), Units.VOLT);
    Members.derived(node, "fullLoadFallPercent", voltage.fall(), Units.PERCENT);
    node.put("statedLoadsVolts", voltage.stated().si());
    Members.derived(node, "statedLoadsFallPercent", Optional.of(voltage.statedFall()), Units.PERCENT);
  }
}
