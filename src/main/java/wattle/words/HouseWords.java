package wattle.words;

import java.util.Optional;
import wattle.model.Box;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.House;
import wattle.model.Room;

/** Things of the house as a sheet names them: by their label first, and always with the name of the plan. */
public final class HouseWords {
  private final House house;

  public HouseWords(House house) {
    this.house = house;
  }

  /** As in {@code Counter (counter)}; the name alone where there is no label or it says the same. */
  public static String titled(Optional<String> label, String name) {
    return label.filter(l -> !l.equals(name)).map(l -> l + " (" + name + ")").orElse(name);
  }

  public String branch(Branch branch) {
    Optional<String> ofBreaker = branch.hots().stream().findFirst().flatMap(h -> house.breaker(h.breaker())).flatMap(Breaker::label);
    return titled(branch.label().or(() -> ofBreaker), branch.name());
  }

  public String panel(String name) {
    return titled(Optional.ofNullable(house.panels().get(name)).flatMap(p -> p.label()), name);
  }

  public String room(String name) {
    return titled(Optional.ofNullable(house.rooms().get(name)).flatMap(Room::label), name);
  }

  public String device(Device device) {
    return device.label().map(l -> l + ", ").orElse("") + device.kind().name() + " " + device.name();
  }

  public String box(String name) {
    Box box = house.boxes().get(name);
    if (box == null) {
      return name;
    }
    String kinds = String.join(", ",
        box.devices().stream().map(d -> house.devices().get(d)).map(d -> d.label().orElse(d.kind().name())).toList());
    return kinds.isEmpty() ? name : name + " (" + kinds + ")";
  }
}
