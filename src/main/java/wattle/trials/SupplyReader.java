package wattle.trials;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.finding.Finding;
import wattle.finding.Mistake;
import wattle.finding.Span;
import wattle.model.Breaker;
import wattle.model.BreakerId;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.DeviceKind.Grid;
import wattle.model.Event;
import wattle.model.House;
import wattle.model.MainDevice;
import wattle.model.Panel;
import wattle.quantity.Quantity;

/**
 * Which sources feed the house in a trial. A transfer switch or an interlock stands on the supply unless an event says
 * otherwise, so that it never joins both. Of sources that could hold the voltage of what they are joined to the supplier's
 * network does, else a generator, else storage; two that can do nothing but hold it are a finding, and the second is left out.
 */
final class SupplyReader {
  private final House house;
  private final List<Finding> findings;
  private final Set<String> lost = new HashSet<>();
  private final Set<String> openMains = new HashSet<>();
  private final Set<String> neutralAway = new HashSet<>();
  private final Map<String, Event.Transferred> positions = new HashMap<>();
  private final Map<String, Double> given = new HashMap<>();
  private final Map<String, Span> on = new LinkedHashMap<>();

  SupplyReader(House house, List<Finding> findings) {
    this.house = house;
    this.findings = findings;
  }

  /** Takes an event that is about what feeds the house; whether it was one. */
  boolean read(Event event) {
    if (event instanceof Event.SupplyLost l) {
      lost.add(l.service());
    } else if (event instanceof Event.MainOpen m) {
      mainOpen(m);
    } else if (event instanceof Event.Transferred t) {
      transferred(t);
    } else if (event instanceof Event.Giving g) {
      giving(g);
    } else if (event instanceof Event.Turned t && isSource(house.devices().get(t.device()))) {
      if (t.on()) {
        runs(house.devices().get(t.device()), t.span());
      } else {
        on.remove(t.device());
        given.remove(t.device());
      }
    } else {
      return false;
    }
    return true;
  }

  static boolean isSource(Device device) {
    return device != null && device.kind().family() == DeviceKind.Family.SOURCE;
  }

  private void mainOpen(Event.MainOpen event) {
    Optional<MainDevice> main = house.panels().get(event.panel()).main();
    if (main.isEmpty() || main.get().kind() == MainDevice.Kind.LUGS) {
      impossible(event.span(), "panel '" + event.panel() + "' has no main that opens", "open what feeds it instead");
    } else {
      openMains.add(event.panel());
    }
  }

  private void transferred(Event.Transferred event) {
    Panel panel = house.panels().get(event.panel());
    boolean transfers = panel.main().filter(m -> m.kind() == MainDevice.Kind.TRANSFER).isPresent()
        || panel.breakers().stream().anyMatch(Breaker::interlocked);
    if (!transfers) {
      impossible(event.span(), "panel '" + panel.name() + "' has no transfer switch and no interlock",
          "write main transfer, or interlocked on the slot line of the source");
      return;
    }
    if (event.source().isPresent()
        && waysOf(event.source().get()).stream().noneMatch(b -> b.id().panel().equals(panel.name()) && (b.backFed() || b.interlocked()))) {
      impossible(event.span(), "'" + event.source().get() + "' feeds panel '" + panel.name() + "' through no breaker of its own",
          "a source on a back-fed breaker of the panel, utility or off");
      return;
    }
    positions.put(panel.name(), event);
  }

  private void giving(Event.Giving event) {
    Device device = house.devices().get(event.device());
    if (!isSource(device)) {
      impossible(event.span(), "'" + device.name() + "' gives nothing", "a source such as a solar inverter is expected here");
      return;
    }
    if (device.kind().grid().orElseThrow() == Grid.FORMS) {
      impossible(event.span(), "'" + device.name() + "' delivers what is drawn from it; its power cannot be set", "write "
          + device.name() + " on");
      return;
    }
    if (!runs(device, event.span())) {
      return;
    }
    double watts = event.given().si();
    if (watts > device.voltAmperes() * (1 + 1e-9)) {
      impossible(event.span(), "'" + device.name() + "' cannot give " + event.given() + ": it is rated "
          + Quantity.of(device.voltAmperes(), wattle.quantity.Units.WATT), "its rating was taken");
      watts = device.voltAmperes();
    }
    given.put(device.name(), watts);
  }

  private boolean runs(Device device, Span span) {
    if (!(device.voltAmperes() > 0)) {
      impossible(span, "the source '" + device.name() + "' states no rating", "write what it can deliver after its kind, such as 5 kW");
      return false;
    }
    if (Place.of(house, device.name()).filter(p -> !p.branch().hots().isEmpty()).isEmpty()) {
      impossible(span, "no run reaches '" + device.name() + "'", "it feeds nothing");
      return false;
    }
    on.put(device.name(), span);
    return true;
  }

  private void impossible(Span span, String headline, String words) {
    findings
        .add(Finding.error(Mistake.TRIAL_IMPOSSIBLE, headline).at(span, words).because("The trial was calculated without this.").build());
  }

  private List<Breaker> waysOf(String device) {
    return Place.of(house, device)
        .map(p -> p.branch().hots().stream().map(h -> h.breaker()).distinct().flatMap(b -> house.breaker(b).stream()).toList())
        .orElse(List.of());
  }

  /** @param openBreakers those that are off; what a transfer holds open is added */
  Supplies finish(Set<BreakerId> openBreakers) {
    house.panels().values().forEach(p -> stand(p, openBreakers));
    return new Supplies(lost, openMains, neutralAway, running(openBreakers));
  }

  private void stand(Panel panel, Set<BreakerId> openBreakers) {
    Event.Transferred position = positions.get(panel.name());
    Set<BreakerId> closed = new HashSet<>();
    if (position != null && (position.off() || position.source().isPresent())) {
      openMains.add(panel.name());
      position.source().ifPresent(s -> waysOf(s).forEach(b -> closed.add(b.id())));
      boolean neutral = panel.breakers().stream().anyMatch(b -> b.switchedNeutral() && (position.off() || closed.contains(b.id())));
      if (neutral) {
        neutralAway.add(panel.name());
      }
    }
    panel.breakers().stream().filter(b -> b.interlocked() && !closed.contains(b.id())).forEach(b -> openBreakers.add(b.id()));
  }

  private Map<String, Supplies.Running> running(Set<BreakerId> openBreakers) {
    if (on.isEmpty()) {
      return Map.of(); // as in nearly every trial, and to look at all devices takes longer than the trial itself
    }
    Islands islands = new Islands(house, openBreakers, openMains);
    Map<String, String> holders = new HashMap<>();
    house.services().keySet().stream().filter(s -> !lost.contains(s))
        .forEach(s -> holders.put(islands.ofService(s), "the utility"));
    Map<String, Supplies.Running> running = new LinkedHashMap<>();
    for (Grid grid : List.of(Grid.FORMS, Grid.EITHER, Grid.FOLLOWS)) {
      for (Device device : house.devices().values()) {
        if (on.containsKey(device.name()) && device.kind().grid().orElseThrow() == grid) {
          String island = islands.ofDevice(device.name());
          String holder = holders.get(island);
          if (grid == Grid.FORMS && holder != null) {
            parallel(device, holder);
            continue;
          }
          boolean holds = grid != Grid.FOLLOWS && holder == null;
          if (holds) {
            holders.put(island, "'" + device.name() + "'");
          }
          double usual = grid == Grid.FOLLOWS ? device.voltAmperes() : 0;
          running.put(device.name(), new Supplies.Running(device.name(), holds ? Supplies.Part.HOLDS : Supplies.Part.FOLLOWS,
              given.getOrDefault(device.name(), usual)));
        }
      }
    }
    Map<String, Supplies.Running> ordered = new LinkedHashMap<>();
    house.devices().keySet().stream().filter(running::containsKey).forEach(d -> ordered.put(d, running.get(d)));
    return ordered;
  }

  private void parallel(Device device, String holder) {
    findings.add(
        Finding.error("sources-in-parallel", "'" + device.name() + "' would run in parallel with " + holder)
            .at(on.get(device.name()), "both set the voltage of the same bus")
            .because(
                "Two sources that set their own voltage push current through each other, and one of them may backfeed the utility "
                    + "while a lineworker is on the line. The trial was calculated without this one.")
            .fix("write transfer and its panel to " + device.name() + ", or interlocked on its slot line in the panel")
            .build());
  }
}
