package wattle.emit.document.export;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import wattle.emit.media.text.Json;
import wattle.emit.sheet.schedule.RunFigures;
import wattle.faults.FaultPoint;
import wattle.model.Electrode;
import wattle.model.MainDevice;
import wattle.model.Race;
import wattle.model.Stretch;
import wattle.model.Terminals;
import wattle.model.Wiring;
import wattle.quantity.Units;
import wattle.words.SurroundingsWords;

/** Runs, what they are made of and what may flow in them. */
final class WiringJson {
  private WiringJson() {}

  static ObjectNode run(Stretch run, RunFigures.Carried carried) {
    ObjectNode node = Json.object();
    Members.figure(node, "lengthMeters", run.length(), Units.METER);
    node.put("laid", SurroundingsWords.of(run.surroundings()));
    node.set("wiring", wiring(run.wiring()));
    carried(node, carried);
    return node;
  }

  static void carried(ObjectNode node, RunFigures.Carried carried) {
    Members.derived(node, "ampacityAmperes", carried.ampacity(), Units.AMPERE);
    Members.derived(node, "betweenTerminalsAmperes", carried.between(), Units.AMPERE);
    Members.derived(node, "racewayFillPercent", carried.fill(), Units.PERCENT);
  }

  static ObjectNode wiring(Wiring wiring) {
    ObjectNode node = Json.object().put("text", wiring.text());
    if (!wiring.type().isEmpty()) {
      node.put("type", wiring.type());
    }
    wiring.race().ifPresent(race -> node.set("raceway", raceway(race)));
    node.put("insulationCelsius", wiring.insulationCelsius()).put("sets", wiring.sets());
    ArrayNode wires = node.putArray("wires");
    wiring.wires().forEach(
        w -> wires.addObject().put("purpose", EnumWords.of(w.purpose())).put("size", w.size().toString()).put("metal", w.metal().word())
            .put("color", w.color()));
    return node;
  }

  static ObjectNode raceway(Race race) {
    return Json.object().put("kind", race.kind()).put("tradeSize", race.size().toString());
  }

  static void electrodes(ObjectNode node, List<Electrode> electrodes) {
    ArrayNode array = node.putArray("electrodes");
    electrodes.forEach(e -> {
      ObjectNode each = array.addObject().put("kind", e.kind()).put("status", e.status().word());
      e.conductor().ifPresent(c -> each.set("conductor", wiring(c)));
      Members.figure(each, "resistanceOhms", e.resistance(), Units.OHM);
    });
  }

  /** Left out where nothing is marked. */
  static void terminals(ObjectNode node, Terminals terminals) {
    if (!terminals.equals(Terminals.UNMARKED)) {
      ObjectNode each = node.putObject("terminals");
      Members.figure(each, "celsius", terminals.temperature(), Units.CELSIUS);
      Members.set(each, "metals", terminals.metals().stream().map(Terminals.Mark::word).toList());
    }
  }

  static void main(ObjectNode node, Optional<MainDevice> main) {
    main.ifPresent(m -> {
      ObjectNode each = node.putObject("main").put("kind", EnumWords.of(m.kind()));
      Members.figure(each, "ratingAmperes", m.rating(), Units.AMPERE);
      Members.figure(each, "interruptingAmperes", m.interrupting(), Units.AMPERE);
      terminals(each, m.terminals());
      Members.set(each, "traits", m.traits());
    });
  }

  /** Bolted faults at a place; none where a length or the source is not known. */
  static void faults(ObjectNode node, FaultPoint point) {
    ArrayNode array = node.putArray("faultCurrents");
    point.faults().forEach(
        f -> array.addObject().put("between", EnumWords.of(f.kind())).put("mostAmperes", f.mostAmperes())
            .put("leastAmperes", f.leastAmperes()));
  }
}
