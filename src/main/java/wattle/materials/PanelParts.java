package wattle.materials;

import java.util.ArrayList;
import java.util.List;
import wattle.model.Breaker;
import wattle.model.Electrode;
import wattle.model.House;
import wattle.model.MainDevice;
import wattle.model.Panel;
import wattle.model.Raceway;
import wattle.model.Service;
import wattle.model.Status;
import wattle.words.BreakerWords;

/** Panels, what stands in their slots, and electrodes. */
final class PanelParts {
  /** {@code rods} are two or more that are bonded together (NFPA 70 250.53(A)(2)); rods are at least 8 ft long (250.52(A)(5)). */
  private static final int LEAST_RODS = 2;

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
        panel.main().filter(m -> m.kind() == MainDevice.Kind.TRANSFER)
            .ifPresent(m -> tally.add(Material.Category.PANEL, BreakerWords.main(m), panel.name()));
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
      if (service.status() == Status.NEW) {
        open.add("service " + service.name() + ": its meter base, mast or conduit and its own disconnects are not stated");
      }
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
    // A transfer switch stands ahead of its panel, in an enclosure of its own.
    panel.main().filter(m -> m.kind() != MainDevice.Kind.TRANSFER)
        .ifPresent(m -> words.add(BreakerWords.main(m) + m.interrupting().map(i -> " " + i).orElse("")));
    return String.join(", ", words);
  }

  private void electrode(Electrode electrode, String place, Tally tally) {
    boolean two = electrode.kind().equals("rods");
    for (int i = 0; i < (two ? LEAST_RODS : 1); i++) {
      if (two || electrode.kind().equals("rod")) {
        tally.add(Material.Category.GROUNDING, "ground rod, 8 ft", place);
        tally.add(Material.Category.GROUNDING, "ground clamp for a rod", place);
      } else {
        if (electrode.kind().equals("plate")) {
          tally.add(Material.Category.GROUNDING, "electrode: plate", place);
        }
        tally.add(Material.Category.GROUNDING, "ground clamp for " + electrode.kind(), place);
      }
    }
    electrode.conductor()
        .ifPresent(c -> open.add("conductor to the electrode " + electrode.kind() + ", " + c.text() + ": the plan states no length of it"));
  }
}
