package wattle.emit.document.directory;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import wattle.model.Branch;
import wattle.model.BreakerId;
import wattle.model.Device;
import wattle.model.DeviceKind.Family;
import wattle.model.House;
import wattle.model.Load;

/** What a branch is for, from what hangs on it, where nobody has given it a label. */
final class PlainWords {
  private PlainWords() {}

  /** As in {@code Outlets, lights, range}; {@code Nothing yet} where nothing hangs on it. */
  static String of(House house, Branch branch, BreakerId breaker) {
    boolean outlets = false;
    boolean lights = false;
    Set<String> equipment = new LinkedHashSet<>();
    for (Device device : devices(house, branch, breaker)) {
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

  /** Those that this handle feeds: of a circuit with a handle for each hot, not what is connected to the other hots alone. */
  static List<Device> devices(House house, Branch branch, BreakerId breaker) {
    return devices(house, branch).stream().filter(d -> d.loads().isEmpty() || d.loads().stream().anyMatch(l -> feeds(branch, breaker, l)))
        .toList();
  }

  private static boolean feeds(Branch branch, BreakerId breaker, Load load) {
    if (load.connection() instanceof Load.Connection.HotToNeutral to) {
      return isOf(branch, to.hot(), breaker);
    }
    if (load.connection() instanceof Load.Connection.HotToHot to) {
      return isOf(branch, to.hot(), breaker) || isOf(branch, to.otherHot(), breaker);
    }
    return true;
  }

  private static boolean isOf(Branch branch, int hot, BreakerId breaker) {
    return hot >= branch.hots().size() || branch.hots().get(hot).breaker().equals(breaker);
  }

  static List<Device> devices(House house, Branch branch) {
    return branch.points().stream().flatMap(p -> p.devices().stream()).map(house.devices()::get).toList();
  }
}
