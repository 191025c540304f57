package wattle.syntax;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.antlr.v4.runtime.ParserRuleContext;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Span;
import wattle.syntax.grammar.WattleParser.*;

/**
 * Finds what one statement says twice where it can be said once: a status, a label, a cable, a trait. The tree has room for one of
 * them, so that the other would be lost without a word.
 */
final class Doubled {
  private final Spans spans;
  private final List<Finding> findings = new ArrayList<>();

  private Doubled(Spans spans) {
    this.spans = spans;
  }

  static List<Finding> in(PlanContext plan, Spans spans) {
    Doubled doubled = new Doubled(spans);
    for (ItemContext item : plan.item()) {
      if (item.thing() != null) {
        doubled.thing(item.thing());
      } else if (item.pattern() != null) {
        item.pattern().thing().forEach(doubled::thing);
      }
    }
    return doubled.findings;
  }

  private void thing(ThingContext thing) {
    if (thing.service() != null) {
      service(thing.service());
    } else if (thing.panel() != null) {
      panel(thing.panel());
    } else if (thing.branch() != null) {
      branch(thing.branch());
    } else if (thing.raceway() != null) {
      once(thing.raceway().racewayItem(), i -> i.raceSize() != null ? "size" : surroundings(i.surroundings(), "status"));
    } else if (thing.room() != null) {
      room(thing.room());
    }
  }

  private void service(ServiceContext service) {
    once(service.serviceItem(),
        i -> i.voltages() != null ? "pair of voltages" : i.status() != null ? "status" : i.amount() == null ? "three-phase" : "");
    once(service.serviceStatement(), s -> s instanceof ServiceRunContext ? "run" : "");
    for (ServiceStatementContext statement : service.serviceStatement()) {
      if (statement instanceof SourceContext source) {
        once(source.sourceItem(), i -> i.STRING() != null ? "label" : Pieces.hasToken(i, "ratio") ? "ratio" : "");
      } else if (statement instanceof EarthContext earth) {
        once(earth.earthItem(), i -> i.wiring() != null ? "conductor" : i.status() != null ? "status" : "");
      } else if (statement instanceof ServiceRunContext run) {
        once(run.surroundings(), s -> surroundings(s, ""));
      }
    }
  }

  private void panel(PanelContext panel) {
    once(panel.panelItem(),
        i -> i.wiring() != null
            ? "feeder"
            : i.status() != null
                ? "status"
                : Pieces.hasToken(i, "from") ? "feed" : Pieces.hasToken(i, "is") ? "use" : surroundings(i.surroundings(), ""));
    List<PanelSettingContext> settings = panel.panelLine().stream().flatMap(l -> l.panelSetting().stream()).toList();
    once(settings, s -> s instanceof PanelFactContext || s instanceof PanelEarthContext || s.getStart() == null
        ? ""
        : s.getStart().getText());
    for (PanelSettingContext setting : settings) {
      if (setting instanceof PanelEarthContext earth) {
        once(earth.earthItem(), i -> i.wiring() != null ? "conductor" : i.status() != null ? "status" : "");
      }
    }
    once(panel.panelLine().stream().filter(l -> l.main() != null).map(PanelLineContext::main).toList(), m -> "main");
    for (PanelLineContext line : panel.panelLine()) {
      if (line.slot() != null) {
        once(line.slot().slotItem(), Doubled::slotItem);
      }
      if (line.main() != null) {
        once(line.main().slotItem(), Doubled::slotItem);
      }
    }
  }

  private static String slotItem(SlotItemContext item) {
    if (item.amount() != null) {
      return "";
    }
    return item.STRING() != null
        ? "label"
        : item.terminals() != null
            ? "terminals"
            : item.status() != null ? "status" : Pieces.hasToken(item, "leg") ? "leg" : item.getText();
  }

  private void branch(BranchContext branch) {
    once(branch.branchItem(),
        i -> i.wiring() != null
            ? "cable"
            : i.status() != null ? "status" : i.surroundings() == null ? "use" : surroundings(i.surroundings(), ""));
    for (ChainContext chain : branch.chain()) {
      for (RunContext run : chain.run()) {
        once(run.runItem(), i -> i.wiring() != null ? "cable" : surroundings(i.surroundings(), "status"));
      }
      for (PlaceContext place : chain.place()) {
        once(place.placeItem(), i -> i.mark() != null ? "hot" : "way of joining");
      }
    }
  }

  private void room(RoomContext room) {
    once(room.roomItem(), i -> i.status() != null ? "status" : i.amount() == null && i.WORD() == null ? "kind of the room" : "");
    room.device().forEach(this::device);
    for (BoxContext box : room.box()) {
      once(box.boxItem(),
          i -> i.NUMBER() != null ? "number of gangs" : i.status() != null ? "status" : i.amount() == null ? i.getText() : "");
      box.device().forEach(this::device);
    }
  }

  private void device(DeviceContext device) {
    once(device.deviceItem(),
        i -> i.amount() != null || Pieces.hasToken(i, "for")
            ? ""
            : i.STRING() != null
                ? "label"
                : i.terminals() != null
                    ? "terminals"
                    : i.status() != null
                        ? "status"
                        : Pieces.hasToken(i, "at") ? "place" : Pieces.hasToken(i, "on") ? "hot" : ""); // its kind's words may be traits too
  }

  private static String surroundings(SurroundingsContext said, String otherwise) {
    return said == null || said.getStart() == null ? otherwise : said.getStart().getText();
  }

  /** @param what a context says, in a word; empty for what may be said again */
  private <C extends ParserRuleContext> void once(List<C> contexts, Function<C, String> what) {
    if (contexts.size() < 2) {
      return;
    }
    Map<String, Span> said = new HashMap<>();
    for (C context : contexts) {
      if (context.exception != null || context.getStop() == null) {
        continue;
      }
      String name = what.apply(context);
      Span first = name.isEmpty() ? null : said.putIfAbsent(name, spans.of(context));
      if (first != null) {
        findings.add(
            Finding.error("said-twice", "'" + name + "' is stated twice")
                .at(spans.of(context), "the second")
                .with(first, "the first")
                .because("One of the two would not be used.")
                .fix(Fix.takenOut("take out the second", spans.of(context)))
                .fix(Fix.takenOut("take out the first", first))
                .build());
      }
    }
  }
}
