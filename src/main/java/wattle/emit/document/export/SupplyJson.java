package wattle.emit.document.export;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import wattle.compiler.Compilation;
import wattle.emit.media.text.Json;
import wattle.emit.sheet.schedule.RunFigures;
import wattle.loads.LegLoads;
import wattle.model.Breaker;
import wattle.model.Dwelling;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Pole;
import wattle.model.Protection;
import wattle.model.Service;
import wattle.model.Slot;
import wattle.model.Source;
import wattle.model.SupplySystem;
import wattle.quantity.Units;
import wattle.worksheet.HouseInputs;
import wattle.worksheet.HouseWorksheets;
import wattle.worksheet.Worksheet;

/** Dwellings, services, panels and breakers. */
final class SupplyJson {
  private final Compilation plan;
  private final RunFigures runs;

  SupplyJson(Compilation plan, RunFigures runs) {
    this.plan = plan;
    this.runs = runs;
  }

  static ObjectNode dwelling(Dwelling dwelling) {
    ObjectNode node = Json.object().put("id", dwelling.title());
    Members.text(node, "label", dwelling.label());
    Members.words(node, "panels", dwelling.panels());
    Members.facts(node, dwelling.facts());
    Members.set(node, "flags", dwelling.flags());
    return node;
  }

  ObjectNode service(Service service) {
    ObjectNode node = Json.object().put("id", service.name());
    Members.text(node, "label", service.label());
    node.put("status", service.status().word());
    node.set("system", system(service.system()));
    node.put("hertz", service.hertz());
    Members.figure(node, "ratingAmperes", service.rating(), Units.AMPERE);
    service.source().ifPresent(s -> node.set("source", source(s)));
    service.run().ifPresent(run -> node.set("run", WiringJson.run(run, runs.of(service, run))));
    WiringJson.electrodes(node, service.electrodes());
    Members.facts(node, service.facts());
    Members.flags(node, service.flags());
    HouseWorksheets worksheets = plan.figures().worksheets();
    worksheets.services().stream().filter(r -> r.inputs().name().equals(service.name())).findFirst()
        .ifPresent(read -> calculated(node, worksheets, read));
    return node;
  }

  private static ObjectNode system(SupplySystem system) {
    ObjectNode node = Json.object().put("kind", EnumWords.of(system.kind())).put("text", system.text())
        .put("legToNeutralVolts", system.legToNeutralVolts()).put("legToLegVolts", system.legToLegVolts());
    Members.words(node, "legs", system.legs().stream().map(Leg::name).toList());
    return node;
  }

  private static ObjectNode source(Source source) {
    ObjectNode node = Json.object();
    if (source instanceof Source.Transformer t) {
      node.put("kind", "transformer").put("ratingVoltAmperes", t.rating().si()).put("impedancePercent", t.impedance().in(Units.PERCENT));
      t.reactanceToResistance().ifPresent(x -> node.put("reactanceToResistance", x.si()));
    } else if (source instanceof Source.Available a) {
      node.put("kind", "available").put("faultCurrentAmperes", a.faultCurrent().si());
      a.reactanceToResistance().ifPresent(x -> node.put("reactanceToResistance", x.si()));
    } else if (source instanceof Source.Generator g) {
      node.put("kind", "generator").put("ratingVoltAmperes", g.rating().si());
      Members.figure(node, "impedancePercent", g.impedance(), Units.PERCENT);
    } else {
      throw new AssertionError(source);
    }
    return node;
  }

  /** The load by the method that is decisive; what none of the methods could calculate has no such member. */
  private static void calculated(ObjectNode node, HouseWorksheets worksheets, HouseInputs.Read read) {
    Optional<Worksheet> worksheet = worksheets.methods().isEmpty()
        ? Optional.empty()
        : worksheets.deciding(read).flatMap(m -> worksheets.calculate(m, read).worksheet());
    worksheet.ifPresent(w -> {
      ObjectNode load = node.putObject("calculatedLoad").put("method", w.method().name()).put("source", w.method().source().toString())
          .put("voltAmperes", w.total().si()).put("amperes", w.current().si()).put("sizedForAmperes", w.sized().si())
          .put("neutralAmperes", w.neutralCurrent().si());
      Members.derived(load, "nextRatingAmperes", w.nextRating(), Units.AMPERE);
      Members.derived(load, "ratingAmperes", w.rating(), Units.AMPERE);
      Members.derived(load, "spareAmperes", w.spare(), Units.AMPERE);
    });
  }

  ObjectNode panel(Panel panel) {
    ObjectNode node = Json.object().put("id", panel.name());
    Members.text(node, "label", panel.label());
    Members.text(node, "room", panel.room());
    node.put("status", panel.status().word());
    Members.text(node, "kind", panel.kind());
    if (panel.supply() instanceof PanelSupply.FromService from) {
      node.putObject("from").put("service", from.service());
    } else if (panel.supply() instanceof PanelSupply.FromBreaker from) {
      node.putObject("from").put("breaker", from.breaker().toString());
    } else if (!(panel.supply() instanceof PanelSupply.Unknown)) {
      throw new AssertionError(panel.supply());
    }
    node.set("system", system(panel.system()));
    Members.figure(node, "busAmperes", panel.busRating(), Units.AMPERE);
    panel.slotCount().ifPresent(s -> node.put("slots", s));
    node.put("slotOrder", panel.order().word()).put("neutralBonded", panel.bonded());
    WiringJson.main(node, panel.main());
    WiringJson.terminals(node, panel.terminals());
    panel.feeder().ifPresent(run -> node.set("feeder", WiringJson.run(run, runs.of(panel, run))));
    WiringJson.electrodes(node, panel.electrodes());
    Members.facts(node, panel.facts());
    Members.flags(node, panel.flags());
    loads(node, plan.figures().loads().panel(panel.name()), panel.system());
    HouseWorksheets worksheets = plan.figures().worksheets();
    if (panel.supply() instanceof PanelSupply.FromBreaker) {
      worksheets.feeder(panel.name()).ifPresent(read -> calculated(node, worksheets, read));
    }
    WiringJson.faults(node, plan.figures().faults().panel(panel.name()));
    ArrayNode breakers = node.putArray("breakers");
    panel.breakers().forEach(b -> breakers.add(breaker(panel, b)));
    return node;
  }

  /** Everything on at once, at nominal voltage. */
  static void loads(ObjectNode node, LegLoads loads, SupplySystem system) {
    ObjectNode load = node.putObject("connectedLoad").put("voltAmperes", loads.total())
        .put("heaviestHotAmperes", loads.heaviestAmperes(system));
    ObjectNode legs = load.putObject("legs");
    system.legs().forEach(leg -> legs.put(leg.name(), loads.on(leg)));
  }

  private ObjectNode breaker(Panel panel, Breaker breaker) {
    ObjectNode node = Json.object().put("id", breaker.id().toString());
    Members.text(node, "label", breaker.label());
    node.put("status", breaker.status().word()).put("device", EnumWords.of(breaker.device())).put("handle", EnumWords.of(breaker.handle()));
    ArrayNode poles = node.putArray("poles");
    breaker.poles().forEach(p -> poles.add(pole(p)));
    Members.figure(node, "ratingAmperes", breaker.rating(), Units.AMPERE);
    Members.figure(node, "interruptingAmperes", breaker.interrupting(), Units.AMPERE);
    Members.set(node, "protection", breaker.protections().stream().map(Protection::word).toList());
    Members.figure(node, "residualAmperes", breaker.residual(), Units.AMPERE);
    breaker.trip().ifPresent(t -> node.put("trip", t.word()));
    breaker.base().ifPresent(b -> node.put("base", b.word()));
    WiringJson.terminals(node, breaker.terminals());
    node.set("feeds", target(breaker.target()));
    Members.words(node, "marks", marks(breaker));
    loads(node, plan.figures().loads().behind(plan.house(), breaker), panel.system());
    return node;
  }

  private static ObjectNode pole(Pole pole) {
    Slot slot = pole.slot();
    ObjectNode node = Json.object().put("slot", slot.toString());
    pole.leg().ifPresent(l -> node.put("leg", l.name()));
    return node;
  }

  private static ObjectNode target(Breaker.Target target) {
    ObjectNode node = Json.object();
    if (target instanceof Breaker.Target.ToBranch to) {
      return node.put("branch", to.branch());
    }
    if (target instanceof Breaker.Target.ToPanel to) {
      return node.put("panel", to.panel());
    }
    if (target instanceof Breaker.Target.Spare) {
      return node.put("nothing", "spare");
    }
    if (target instanceof Breaker.Target.Later) {
      return node.put("nothing", "later");
    }
    if (target instanceof Breaker.Target.Unknown to) {
      return node.put("unknown", to.name());
    }
    throw new AssertionError(target);
  }

  private static List<String> marks(Breaker breaker) {
    return Stream.of(
        breaker.pinned() ? "pinned" : "", breaker.legsStated() ? "legs-stated" : "", breaker.backFed() ? "back-fed" : "",
        breaker.interlocked() ? "interlocked" : "", breaker.switchedNeutral() ? "switched-neutral" : "").filter(m -> !m.isEmpty()).toList();
  }
}
