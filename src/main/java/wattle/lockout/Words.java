package wattle.lockout;

import java.util.Optional;
import wattle.model.Box;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.House;
import wattle.model.MainDevice;
import wattle.model.Room;

/** Things of the house as a sheet names them: by their label first, and always with the name of the plan. */
final class Words {
  private final House house;

  Words(House house) {
    this.house = house;
  }

  static String titled(Optional<String> label, String name) {
    return label.filter(l -> !l.equals(name)).map(l -> l + " (" + name + ")").orElse(name);
  }

  String branch(Branch branch) {
    Optional<String> ofBreaker = branch.hots().stream().findFirst().flatMap(h -> house.breaker(h.breaker())).flatMap(Breaker::label);
    return titled(branch.label().or(() -> ofBreaker), branch.name());
  }

  String panel(String name) {
    return titled(Optional.ofNullable(house.panels().get(name)).flatMap(p -> p.label()), name);
  }

  String room(String name) {
    return titled(Optional.ofNullable(house.rooms().get(name)).flatMap(Room::label), name);
  }

  String device(Device device) {
    return device.label().map(l -> l + ", ").orElse("") + device.kind().name() + " " + device.name();
  }

  String box(String name) {
    Box box = house.boxes().get(name);
    if (box == null) {
      return name;
    }
    String kinds = String.join(", ",
        box.devices().stream().map(d -> house.devices().get(d)).map(d -> d.label().orElse(d.kind().name())).toList());
    return kinds.isEmpty() ? name : name + " (" + kinds + ")";
  }

  /** {@code two-pole 20 A breaker}, {@code 15 A fuse}. */
  static String breaker(Breaker breaker) {
    String rating = breaker.rating().map(r -> r + " ").orElse("");
    int poles = breaker.poles().size();
    if (breaker.device() == Breaker.Device.FUSE) {
      return (poles > 1 ? poles + " fuses of one way, " + rating.strip() : rating + "fuse").strip();
    }
    String poleWord = poles == 2 ? "two-pole " : poles == 3 ? "three-pole " : poles == 1 ? "single-pole " : poles + "-pole ";
    return breaker.handle() == Breaker.Handle.TIED
        ? poles + " breakers with tied handles, " + rating.strip()
        : poleWord + rating + "breaker";
  }

  static String main(MainDevice main) {
    return (main.kind() == MainDevice.Kind.TRANSFER ? "transfer switch" : "main " + main.kind().name().toLowerCase(java.util.Locale.ROOT))
        + main.rating().map(r -> ", " + r).orElse("");
  }
}
