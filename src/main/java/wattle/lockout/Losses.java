package wattle.lockout;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import wattle.model.Branch;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.House;
import wattle.words.HouseWords;

/** What goes dead with a place, beyond the place itself. */
final class Losses {
  private final House house;
  private final Circuits circuits;
  private final HouseWords words;

  Losses(House house, Circuits circuits, HouseWords words) {
    this.house = house;
    this.circuits = circuits;
    this.words = words;
  }

  /**
   * Branch by branch; one that serves nothing but the place is left out.
   *
   * @param killed names of the branches that lose their supply
   */
  List<Lockout.Dead> of(Set<String> killed, Place place) {
    Set<String> here = new LinkedHashSet<>(place.boxes());
    List<Lockout.Dead> dead = new ArrayList<>();
    for (String name : killed) {
      Branch branch = house.branches().get(name);
      List<String> devices = circuits.devicesOn(branch).stream()
          .filter(d -> !here.contains(d.box()) && d.kind().family() != DeviceKind.Family.JUNCTION)
          .map(this::described)
          .toList();
      if (!devices.isEmpty()) {
        dead.add(new Lockout.Dead(words.branch(branch), devices));
      }
    }
    return dead;
  }

  private String described(Device device) {
    return words.device(device);
  }
}
