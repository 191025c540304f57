package wattle.live;

import java.util.List;
import wattle.emit.media.page.Markup;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.House;
import wattle.model.Room;

/** All loads and switches of the house, room by room. */
final class LoadPart {
  /** A page of more buttons helps nobody; those of the branch that is shown stand beside its picture. */
  private static final int MOST = 600;
  private static final int MOST_SERVICES = 12;

  private final Situation situation;
  private final Markup out = new Markup();
  private final Controls controls;

  LoadPart(Situation situation) {
    this.situation = situation;
    controls = new Controls(out, situation);
  }

  String html() {
    House house = situation.plan().house();
    if (!house.services().isEmpty()) {
      out.open("p", "class", "controls");
      controls.toggle("open service neutral", "Lose the neutral of the service");
      house.services().keySet().stream().limit(MOST_SERVICES).forEach(s -> controls.toggle(EventKey.lose(s), "Lose the supply " + s));
      out.close();
    }
    List<Device> works = house.devices().values().stream().filter(LoadPart::works).toList();
    if (works.size() > MOST) {
      return out.element("p", "The plan has " + works.size() + " loads and switches: choose a branch and a box above for theirs.", "class",
          "note").toString();
    }
    for (Room room : house.rooms().values()) {
      List<Device> here = works.stream().filter(d -> d.room().equals(room.name())).toList();
      if (!here.isEmpty()) {
        room(room, here);
      }
    }
    return out.toString();
  }

  private static boolean works(Device device) {
    return isSwitch(device) || Loads.draws(device) || Loads.isSource(device);
  }

  private static boolean isSwitch(Device device) {
    return device.kind().family() == DeviceKind.Family.SWITCH;
  }

  private void room(Room room, List<Device> devices) {
    long changed = devices.stream().filter(d -> !situation.at(d.name() + " on").isEmpty() || !situation.at(d.name() + " off").isEmpty())
        .count();
    out.open("details", "id", "room-" + room.name(), "class", "room");
    out.element("summary", room.name() + room.label().map(l -> ", " + l).orElse("") + (changed == 0 ? "" : ": " + changed + " changed"));
    out.open("div", "class", "controls");
    for (Device device : devices) {
      if (isSwitch(device)) {
        controls.toggle(device.name() + " off", "Switch off " + device.name());
      }
      if (Loads.draws(device) || Loads.isSource(device)) {
        controls.toggle(device.name() + " on", BoxControls.onWords(device));
      }
    }
    out.close().close();
  }
}
