package wattle.materials;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import wattle.model.Box;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.DeviceKind.Family;
import wattle.model.House;
import wattle.model.Status;

/** Boxes, their covers, and the devices in them. */
final class BoxParts {
  /** Traits that say how an appliance is connected; {@link PluggedIn} has words for them. */
  private static final List<String> CONNECTIONS = List.of("hardwired", "cord-connected");

  private final House house;
  private final List<String> open;
  private final PluggedIn pluggedIn;

  BoxParts(House house, List<String> open) {
    this.house = house;
    this.open = open;
    pluggedIn = new PluggedIn(house);
  }

  void count(Tally tally) {
    int withoutVolume = 0;
    for (Box box : house.boxes().values()) {
      List<Device> devices = box.devices().stream().map(house.devices()::get).toList();
      if (box.status() == Status.NEW && !box.traits().contains("later") && !box.traits().contains("boxless")) {
        tally.add(Material.Category.BOX, box(box, devices), box.name());
        withoutVolume += box.volume().isEmpty() ? 1 : 0;
      }
      boolean touched = box.status() == Status.NEW || devices.stream().anyMatch(d -> d.status() == Status.NEW);
      if (touched && box.status() != Status.TO_REMOVE) {
        cover(box, devices).ifPresent(c -> tally.add(Material.Category.COVER, c, box.name()));
      }
      devices.stream().filter(d -> d.status() == Status.NEW).forEach(d -> device(d, tally));
    }
    house.devices().values().stream().filter(d -> d.status() == Status.NEW && d.kind().name().endsWith("generator inlet"))
        .forEach(d -> open.add("the generator that is plugged into " + d.name() + " and its cord are not counted"));
    house.rooms().values().stream().filter(r -> r.status() == Status.NEW && r.flags().getOrDefault("equipotential-plane", false))
        .forEach(r -> open.add("equipotential plane of " + r.name() + ": its mesh, clamps and 8 AWG jumpers are not counted"));
    if (withoutVolume > 0) {
      open.add(withoutVolume + (withoutVolume == 1 ? " box has" : " boxes have")
          + " no volume stated; see the table of boxes for the box fill of each");
    }
  }

  /** {@code device box, 2-gang, 32 in³, plastic}. */
  private static String box(Box box, List<Device> devices) {
    List<String> words = new ArrayList<>();
    words.add(shape(box, devices));
    if (words.get(0).equals("device box")) {
      words.add(gangs(box, devices) + "-gang");
    }
    box.volume().ifPresent(v -> words.add(v.toString()));
    TreeSet<String> traits = new TreeSet<>(box.traits());
    if (isWet(box, devices)) {
      traits.add("weatherproof");
    }
    traits.stream().filter(t -> !List.of("round", "square", "octagon").contains(t)).forEach(words::add);
    return String.join(", ", words);
  }

  private static String shape(Box box, List<Device> devices) {
    for (String shape : List.of("round", "square", "octagon")) {
      if (box.traits().contains(shape)) {
        return shape + " box";
      }
    }
    if (onStraps(devices)) {
      return "device box";
    }
    if (devices.isEmpty() || devices.stream().allMatch(d -> d.kind().family() == Family.JUNCTION)) {
      return "junction box";
    }
    boolean light = devices.stream().anyMatch(d -> d.kind().family() == Family.LIGHT);
    return light ? "ceiling or wall box for a light" : "outlet box, or the terminal box of the appliance";
  }

  private static boolean isWet(Box box, List<Device> devices) {
    return box.traits().contains("weatherproof") || devices.stream().anyMatch(d -> d.traits().contains("weatherproof"));
  }

  private static boolean onStraps(List<Device> devices) {
    return devices.stream().anyMatch(d -> d.kind().family() == Family.RECEPTACLE || d.kind().family() == Family.SWITCH);
  }

  private static int gangs(Box box, List<Device> devices) {
    return box.gangs().orElse(Math.max(1, devices.stream().mapToInt(d -> d.kind().yokes()).sum()));
  }

  private static Optional<String> cover(Box box, List<Device> devices) {
    boolean wet = isWet(box, devices);
    if (onStraps(devices)) {
      return Optional.of((wet ? "weatherproof cover, " : "cover plate, ") + gangs(box, devices) + "-gang");
    }
    boolean junction = devices.isEmpty() || devices.stream().allMatch(d -> d.kind().family() == Family.JUNCTION);
    return junction ? Optional.of(wet ? "weatherproof blank cover" : "blank cover") : Optional.empty();
  }

  private void device(Device device, Tally tally) {
    DeviceKind kind = device.kind();
    if (kind.family() == Family.JUNCTION) {
      return;
    }
    List<String> words = new ArrayList<>(List.of(kind.name()));
    boolean equipment = kind.family() == Family.APPLIANCE || kind.family() == Family.SOURCE;
    if (equipment || kind.family() == Family.LIGHT) {
      device.loads().stream().filter(l -> l.part().isEmpty()).findFirst().flatMap(l -> l.rated()).ifPresent(r -> words.add(r.toString()));
    } else {
      Optional.ofNullable(device.facts().get("rated")).or(kind::rating).ifPresent(r -> words.add(r.toString()));
    }
    if (kind.family() == Family.RECEPTACLE) {
      pluggedIn.configuration(device).ifPresent(c -> words.add(1, c));
    }
    new TreeSet<>(device.traits()).stream().filter(t -> !t.equals("protects-onward") && !CONNECTIONS.contains(t)).forEach(words::add);
    String connection = kind.family() == Family.APPLIANCE ? pluggedIn.word(device) : "";
    if (!connection.isEmpty()) {
      words.add(connection);
    }
    pluggedIn.count(device, tally, open);
    tally.add(equipment ? Material.Category.EQUIPMENT : Material.Category.DEVICE, String.join(", ", words), device.name());
  }
}
