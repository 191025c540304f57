package wattle.materials;

import java.util.ArrayList;
import java.util.List;
import wattle.model.Breaker;
import wattle.model.Electrode;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.Raceway;
import wattle.model.Service;
import wattle.model.Status;
import wattle.words.BreakerWords;

/** Panels, what stands in their slots, and electrodes. */
final class PanelParts {
  private final House house;
  private final List<String> open;

  PanelParts(House house, List<String> open) {
    this.house = house;
    this.open = open;
  }

  void count(Tally tally) {
    for (Panel panel : house.panels().values()) {
      if (panel.status() == Status.NEW) {
        tally.add(Material.Category.PANEL, panel(panel), panel.name());
      }
      for (Breaker breaker : panel.breakers()) {
        if (breaker.status() != Status.NEW) {
          continue;
        }
        if (breaker.target() instanceof Breaker.Target.Later && breaker.rating().isEmpty()) {
          open.add("slot " + breaker.id() + " is not decided yet");
        } else {
          tally.add(Material.Category.BREAKER, BreakerWords.ordered(breaker), breaker.id().toString());
        }
      }
    }
    for (Service service : house.services().values()) {
      service.electrodes().stream().filter(e -> e.status() == Status.NEW).forEach(e -> electrode(e, service.name(), tally));
    }
    for (Panel panel : house.panels().values()) {
      panel.electrodes().stream().filter(e -> e.status() == Status.NEW).forEach(e -> electrode(e, panel.name(), tally));
    }
    for (Raceway raceway : house.raceways().values()) {
      if (raceway.status() == Status.NEW && raceway.race().isPresent() && raceway.length().isEmpty()) {
        open.add("raceway " + raceway.name() + ", " + raceway.race().get().text() + ": the plan states no length of it");
      }
    }
  }

  private static String panel(Panel panel) {
    List<String> words = new ArrayList<>();
    words.add("panel");
    panel.busRating().ifPresent(b -> words.add("bus " + b));
    panel.slotCount().ifPresent(s -> words.add(s + " slots"));
    panel.main().ifPresent(m -> words.add(BreakerWords.main(m) + m.interrupting().map(i -> " " + i).orElse("")));
    return String.join(", ", words);
  }

  private void electrode(Electrode electrode, String place, Tally tally) {
    boolean bought = List.of("rod", "rods", "plate").contains(electrode.kind());
    if (bought) {
      tally.add(Material.Category.GROUNDING, "electrode: " + electrode.kind(), place);
    }
    tally.add(Material.Category.GROUNDING, "ground clamp for " + electrode.kind(), place);
    electrode.conductor()
        .ifPresent(c -> open.add("conductor to the electrode " + electrode.kind() + ", " + c.text() + ": the plan states no length of it"));
  }
}
