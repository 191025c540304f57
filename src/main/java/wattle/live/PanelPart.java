package wattle.live;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import wattle.emit.media.drawing.DrawingSvg;
import wattle.emit.media.page.Markup;
import wattle.emit.view.panelfront.BreakerState;
import wattle.emit.view.panelfront.PanelFront;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.MainDevice;
import wattle.model.Panel;
import wattle.quantity.Quantity;
import wattle.trials.TrialResult;
import wattle.words.BreakerWords;

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
    Choice.of(out, "panel", "Panel", house.panels().values().stream().toList(), Panel::name,
        p -> p.name() + p.label().map(l -> ", " + l).orElse(""), panel.name());
    Map<String, BreakerState> states = states();
    out.open("div", "class", "wide picture", "role", "group", "tabindex", "0", "aria-label", "Front of panel " + panel.name());
    out.raw(DrawingSvg.pointable(new PanelFront(house, states).drawing(panel, width), "front")).close();
    out.open("details", "id", "breakers", "open", "open").element("summary", "Breakers of panel " + panel.name());
    supply(panel);
    out.open("ul", "class", "controls");
    panel.breakers().stream().filter(PanelPart::works).forEach(b -> breaker(b, Optional.ofNullable(states.get(b.id().toString()))));
    return out.close().close().toString();
  }

  /** Its main, and what it can be transferred to. */
  private void supply(Panel panel) {
    boolean opens = panel.main().filter(m -> m.kind() != MainDevice.Kind.LUGS).isPresent();
    List<String> sources = transfers(panel);
    if (!opens && sources.isEmpty()) {
      return;
    }
    out.open("div", "class", "controls", "role", "group", "aria-label", "What feeds panel " + panel.name());
    if (opens) {
      controls.toggle(EventKey.openMain(panel.name()), "Open the main of " + panel.name());
    }
    if (!sources.isEmpty()) {
      Map<String, String> positions = new LinkedHashMap<>();
      sources.forEach(s -> positions.put(EventKey.transfer(panel.name(), s), "Transfer to " + s));
      positions.put(EventKey.transfer(panel.name(), "off"), "Transfer to neither");
      controls.oneOf(positions);
    }
    out.close();
  }

  /** Sources that a transfer switch or an interlock of the panel can put in the place of its supply. */
  private List<String> transfers(Panel panel) {
    if (panel.main().filter(m -> m.kind() == MainDevice.Kind.TRANSFER).isEmpty()
        && panel.breakers().stream().noneMatch(Breaker::interlocked)) {
      return List.of();
    }
    return panel.breakers().stream()
        .filter(b -> b.backFed() || b.interlocked())
        .flatMap(b -> house.branchOf(b).stream())
        .flatMap(b -> b.points().stream()).flatMap(p -> p.devices().stream())
        .filter(d -> house.devices().containsKey(d) && Loads.isSource(house.devices().get(d)))
        .distinct().toList();
  }

  /** One with nothing on it has nothing to interrupt. */
  private static boolean works(Breaker breaker) {
    return breaker.target() instanceof Breaker.Target.ToBranch || breaker.target() instanceof Breaker.Target.ToPanel;
  }

  private void breaker(Breaker breaker, Optional<BreakerState> state) {
    out.open("li");
    controls.toggle("open breaker " + breaker.id(), "Open " + breaker.id());
    out.element("span",
        BreakerWords.description(house, breaker) + ", " + BreakerWords.rating(breaker) + state.map(s -> ": " + s.words()).orElse(""),
        "class",
        "what");
    if (breaker.target() instanceof Breaker.Target.ToBranch to && house.branches().containsKey(to.branch())) {
      out.element("button", "Show " + to.branch(), "type", "button", "class", "show", "data-branch", to.branch());
    } else if (breaker.target() instanceof Breaker.Target.ToPanel to && house.panels().containsKey(to.panel())) {
      out.element("button", "Show panel " + to.panel(), "type", "button", "class", "show", "data-panel", to.panel());
    }
    out.close();
  }

  private Map<String, BreakerState> states() {
    Map<String, BreakerState> states = new HashMap<>();
    Map<String, TrialResult.OvercurrentReading> over = new HashMap<>();
    situation.result().overcurrents().forEach(o -> over.putIfAbsent(o.name().substring(o.name().indexOf(' ') + 1), o));
    for (Panel panel : house.panels().values()) {
      if (situation.result().isMainOpen(panel.name())) {
        states.put("main " + panel.name(), new BreakerState("OPEN", true));
      }
      for (Breaker breaker : panel.breakers()) {
        TrialResult.OvercurrentReading carries = over.get(breaker.id().toString());
        if (situation.result().isOpen(breaker.id())) {
          states.put(breaker.id().toString(), new BreakerState("OPEN", true));
        } else if (carries != null) {
          states.put(breaker.id().toString(), new BreakerState("carries " + Quantity.plain(carries.amps().si(), 3) + " A", false));
        }
      }
    }
    return states;
  }
}
