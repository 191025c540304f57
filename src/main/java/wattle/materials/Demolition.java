package wattle.materials;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import wattle.model.Box;
import wattle.model.Branch;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.Section;
import wattle.model.Status;
import wattle.words.BreakerWords;

/** What a plan says is to be removed. */
public record Demolition(List<Material> items) {
  public Demolition {
    items = List.copyOf(items);
  }

  /** Counts what is to be removed; lengths are those of the runs, without slack. */
  public static Demolition of(House house) {
    List<Material> items = new ArrayList<>(cables(house));
    Tally tally = new Tally();
    for (Panel panel : house.panels().values()) {
      if (panel.status() == Status.TO_REMOVE) {
        tally.add(Material.Category.PANEL, panel.kind().orElse("panel"), panel.name());
      }
      panel.breakers().stream().filter(b -> b.status() == Status.TO_REMOVE)
          .forEach(b -> tally.add(Material.Category.BREAKER, BreakerWords.named(b), b.id().toString()));
    }
    for (Box box : house.boxes().values()) {
      if (box.status() == Status.TO_REMOVE) {
        tally.add(Material.Category.BOX, "box", box.name());
      }
    }
    for (Device device : house.devices().values()) {
      if (device.status() == Status.TO_REMOVE && device.kind().family() != DeviceKind.Family.JUNCTION) {
        boolean equipment = device.kind().family() == DeviceKind.Family.APPLIANCE || device.kind().family() == DeviceKind.Family.SOURCE;
        tally.add(equipment ? Material.Category.EQUIPMENT : Material.Category.DEVICE, device.kind().name(), device.name());
      }
    }
    items.addAll(tally.items());
    items.sort(java.util.Comparator.comparing(Material::category));
    return new Demolition(items);
  }

  private static List<Material> cables(House house) {
    Map<String, Double> meters = new TreeMap<>();
    Map<String, List<String>> branches = new TreeMap<>();
    for (Branch branch : house.branches().values()) {
      for (Section section : branch.sections()) {
        if (section.status() == Status.TO_REMOVE && section.length().isPresent()) {
          String what = section.wiring().text();
          meters.merge(what, section.length().get().si(), Double::sum);
          List<String> places = branches.computeIfAbsent(what, w -> new ArrayList<>());
          if (!places.contains(branch.name())) {
            places.add(branch.name());
          }
        }
      }
    }
    List<Material> items = new ArrayList<>();
    meters.forEach(
        (what, length) -> items.add(new Material(Material.Category.CABLE, what, length, true, branches.get(what), Optional.empty())));
    return items;
  }
}
