package wattle.materials;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import wattle.model.Breaker;
import wattle.model.Electrode;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.Protection;
import wattle.model.Raceway;
import wattle.model.Service;
import wattle.model.Status;

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
          tally.add(Material.Category.BREAKER, breaker(breaker), breaker.id().toString());
        }
      }
    }
    for (Service service : house.services().values()) {
      service.electrodes().stream().filter(e -> e.status() == Status.NEW).forEach(e -> electrode(e, service, tally));
    }
    for (Raceway raceway : house.raceways().values()) {
      if (raceway.status() == Status.NEW && raceway.size().isPresent()) {
        open.add("raceway " + raceway.name() + ", " + raceway.size().get() + ": the plan states no length of it");
      }
    }
  }

  private static String panel(Panel panel) {
    List<String> words = new ArrayList<>();
    words.add("panel");
    panel.busRating().ifPresent(b -> words.add("bus " + b));
    panel.slotCount().ifPresent(s -> words.add(s + " slots"));
    panel.main().ifPresent(m -> words.add("main " + m.kind().name().toLowerCase(java.util.Locale.ROOT)
        + m.rating().map(r -> " " + r).orElse("") + m.interrupting().map(i -> " " + i).orElse("")));
    return String.join(", ", words);
  }

  /** {@code 20 A two-pole, arc-fault}. */
  private static String breaker(Breaker breaker) {
    String rating = breaker.rating().map(Object::toString).orElse("rating open");
    int poles = breaker.poles().size();
    if (breaker.device() == Breaker.Device.FUSE) {
      return rating + " fuse" + (poles > 1 ? ", set of " + poles : "");
    }
    boolean half = breaker.poles().stream().anyMatch(p -> p.slot().half().isPresent());
    List<String> words = new ArrayList<>();
    words.add(rating + " " + switch (poles) {
      case 1 -> "single-pole";
      case 2 -> "two-pole";
      case 3 -> "three-pole";
      default -> poles + "-pole";
    });
    if (breaker.handle() == Breaker.Handle.TIED) {
      words.add("single poles with a handle tie");
    }
    if (half) {
      words.add("half-size");
    }
    breaker.protections().stream().sorted(Comparator.naturalOrder()).map(Protection::word).forEach(words::add);
    breaker.interrupting().ifPresent(i -> words.add(i.toString()));
    if (breaker.interlocked()) {
      words.add("with interlock");
    }
    return String.join(", ", words);
  }

  private void electrode(Electrode electrode, Service service, Tally tally) {
    boolean bought = List.of("rod", "rods", "plate").contains(electrode.kind());
    if (bought) {
      tally.add(Material.Category.GROUNDING, "electrode: " + electrode.kind(), service.name());
    }
    tally.add(Material.Category.GROUNDING, "ground clamp for " + electrode.kind(), service.name());
    electrode.conductor()
        .ifPresent(c -> open.add("conductor to the electrode " + electrode.kind() + ", " + c.text() + ": the plan states no length of it"));
  }
}
