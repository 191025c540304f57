package wattle.rules;

import java.util.Arrays;
import java.util.Optional;
import wattle.model.Box;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.Dwelling;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.Raceway;
import wattle.model.Room;
import wattle.model.Service;
import wattle.model.Wiring;

/** The kinds of things that rules are about. */
public enum Kind {
  HOUSE(House.class, "house", "the whole plan"), DWELLING(Dwelling.class, "dwelling", "the building"), SERVICE(Service.class, "service",
      "where the supply enters"), ELECTRODE(ElectrodeOf.class, "electrode", "a grounding electrode with its conductor"), PANEL(Panel.class,
          "panel", "a panelboard or fuse box"), BREAKER(Breaker.class, "breaker", "a breaker or fuse in a panel"), FEEDER(FeederOf.class,
              "feeder",
              "the run from a breaker or service to a panel"), BRANCH(Branch.class, "branch", "a branch circuit"), RUN(RunOf.class, "run",
                  "one run of a branch, from box to box"), WIRING(Wiring.class, "wiring", "what a run is made with"), BOX(Box.class, "box",
                      "a box"), DEVICE(Device.class, "device", "a device in a box"), ROOM(Room.class, "room",
                          "a room or place"), RACEWAY(Raceway.class, "raceway", "a raceway with a name, for several runs");

  private final String word;
  private final String meaning;
  private final Class<?> type;

  Kind(Class<?> type, String word, String meaning) {
    this.type = type;
    this.word = word;
    this.meaning = meaning;
  }

  /** As rules write it. */
  public String word() {
    return word;
  }

  /** For readers. */
  public String meaning() {
    return meaning;
  }

  /** The kind of a thing of the model. */
  static Kind ofThing(Object thing) {
    return Arrays.stream(values()).filter(k -> k.type.isInstance(thing)).findFirst().orElseThrow(() -> new AssertionError(thing));
  }

  /**
   * What a thing has in common with others of its sort: the part that a device is, what a room is used for, the wiring of a run. Sorts are
   * told apart by identity.
   *
   * @return absent for what has no sort
   */
  static Optional<Object> sortOf(Object thing) {
    if (thing instanceof Device device) {
      return Optional.of(device.kind());
    }
    if (thing instanceof RunOf run) {
      return Optional.of(run.section().wiring());
    }
    return thing instanceof Room room ? room.kind().map(k -> k) : Optional.empty();
  }

  static Optional<Kind> of(String word) {
    for (Kind kind : values()) {
      if (kind.word.equals(word)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }
}
