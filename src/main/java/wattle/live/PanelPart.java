package wattle.live;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import wattle.emit.document.Markup;
import wattle.emit.drawing.DrawingSvg;
import wattle.emit.panelfront.BreakerState;
import wattle.emit.panelfront.PanelFront;
import wattle.emit.schedule.BreakerText;
import wattle.model.Breaker;
import wattle.model.BreakerId;
import wattle.model.House;
import wattle.model.Panel;
import wattle.quantity.Quantity;
import wattle.trials.TrialResult;

/** One panel: its front, in which breakers are clicked, and beside it the same as a list of buttons. */
final class PanelPart {
  private final House house;
  private final Situation situation;
  private final Markup out = new Markup();
  private final Controls controls;

  PanelPart(Situation situation) {
    this.situation = situation;
    house = situation.plan().house();
    controls = new Controls(out, situation);
  }

  String html(Optional<Panel> shown, double width) {
    if (shown.isEmpty()) {
      return out.element("p", "The plan has no panel.").toString();
    }
    Panel panel = shown.get();
    Choice.of(out, "panel", "Panel", house.panels().values().stream().toList(), Panel::name, p -> p.name() + p.label().map(l -> ", " + l).orElse(""), panel.name());
    Map<BreakerId, BreakerState> states = states();
    out.open("div", "class", "wide picture", "role", "group", "tabindex", "0", "aria-label", "Front of panel " + panel.name());
    out.raw(DrawingSvg.pointable(new PanelFront(house, states).drawing(panel, width), "front")).close();
    out.open("details", "id", "breakers", "open", "open").element("summary", "Breakers of panel " + panel.name());
    out.open("ul", "class", "controls");
    panel.breakers().stream().filter(PanelPart::works).forEach(b -> breaker(b, Optional.ofNullable(states.get(b.id()))));
    return out.close().close().toString();
  }

  /** One with nothing on it has nothing to interrupt. */
  private static boolean works(Breaker breaker) {
    return breaker.target() instanceof Breaker.Target.ToBranch || breaker.target() instanceof Breaker.Target.ToPanel;
  }

  private void breaker(Breaker breaker, Optional<BreakerState> state) {
    out.open("li");
    controls.toggle("open breaker " + breaker.id(), "Open " + breaker.id());
    out.element("span", BreakerText.description(house, breaker) + ", " + BreakerText.rating(breaker) + state.map(s -> ": " + s.words()).orElse(""), "class", "what");
    if (breaker.target() instanceof Breaker.Target.ToBranch to && house.branches().containsKey(to.branch())) {
      out.element("button", "Show " + to.branch(), "type", "button", "class", "show", "data-branch", to.branch());
    } else if (breaker.target() instanceof Breaker.Target.ToPanel to && house.panels().containsKey(to.panel())) {
      out.element("button", "Show panel " + to.panel(), "type", "button", "class", "show", "data-panel", to.panel());
    }
    out.close();
  }

  private Map<BreakerId, BreakerState> states() {
    Map<BreakerId, BreakerState> states = new HashMap<>();
    Map<String, TrialResult.OvercurrentReading> over = new HashMap<>();
    situation.result().overcurrents().forEach(o -> over.putIfAbsent(o.name().substring(o.name().indexOf(' ') + 1), o));
    for (Panel panel : house.panels().values()) {
      for (Breaker breaker : panel.breakers()) {
        TrialResult.OvercurrentReading carries = over.get(breaker.id().toString());
        if (situation.result().isOpen(breaker.id())) {
          states.put(breaker.id(), new BreakerState("OPEN", true));
        } else if (carries != null) {
          states.put(breaker.id(), new BreakerState("carries " + Quantity.plain(carries.amps().si(), 3) + " A", false));
        }
      }
    }
    return states;
  }
}
