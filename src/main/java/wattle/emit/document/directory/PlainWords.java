package wattle.emit.document.directory;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import wattle.model.Branch;
import wattle.model.Device;
import wattle.model.DeviceKind.Family;
import wattle.model.House;

/** What a branch is for, from what hangs on it, where nobody has given it a label. */
final class PlainWords {
  private PlainWords() {}

  /** As in {@code Outlets, lights, range}; {@code Nothing yet} where nothing hangs on it. */
  static String of(House house, Branch branch) {
    boolean outlets = false;
    boolean lights = false;
    Set<String> equipment = new LinkedHashSet<>();
    for (Device device : devices(house, branch)) {
      if (device.kind().family() == Family.RECEPTACLE) {
        outlets = true;
      } else if (device.kind().family() == Family.LIGHT) {
        lights = true;
      } else if (device.kind().family() == Family.APPLIANCE || device.kind().family() == Family.SOURCE) {
        equipment.add(device.label().orElse(device.kind().name()));
      }
    }
    List<String> words = new ArrayList<>();
    if (outlets) {
      words.add("outlets");
    }
    if (lights) {
      words.add("lights");
    }
    words.addAll(equipment);
    String text = words.isEmpty() ? "nothing yet" : String.join(", ", words);
    return text.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + text.substring(1);
  }

  static List<Device> devices(House house, Branch branch) {
    return branch.points().stream().flatMap(p -> p.devices().stream()).map(house.devices()::get).toList();
  }
}
