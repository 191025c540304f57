package wattle.rules;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.model.Electrode;
import wattle.model.Status;

/** What a building has that must be used as an electrode where it is there (NFPA 70 250.50, 250.52(A)(1) to (3)). */
final class PresentElectrodes {
  /**
   * Something of a building.
   *
   * @param flag by which a plan says that it is there
   * @param electrode the kind of electrode that it is
   * @param words for a message
   */
  private record Present(String flag, String electrode, String words) {}

  private static final List<Present> ALL = List.of(
      new Present("buried-water-pipe", "water-pipe", "its buried metal water pipe"),
      new Present("footing-rebar", "concrete", "the steel in its footing"),
      new Present("steel-frame", "steel", "its steel frame"));

  private PresentElectrodes() {}

  /** Null where nothing is left unused and the plan does not say of all whether they are there. */
  static Boolean used(Map<String, Boolean> flags, List<Electrode> electrodes) {
    if (first(flags, electrodes).isPresent()) {
      return Boolean.FALSE;
    }
    return ALL.stream().allMatch(p -> flags.containsKey(p.flag) || isUsed(p, electrodes)) ? Boolean.TRUE : null;
  }

  /** In words; absent where nothing that the plan says is there is left unused. */
  static Optional<String> unused(Map<String, Boolean> flags, List<Electrode> electrodes) {
    return first(flags, electrodes).map(Present::words);
  }

  /** A line of the plan that would use it, without the size, which depends on the supply. */
  static Optional<String> line(Map<String, Boolean> flags, List<Electrode> electrodes) {
    return first(flags, electrodes).map(p -> "earth " + p.electrode);
  }

  private static Optional<Present> first(Map<String, Boolean> flags, List<Electrode> electrodes) {
    return ALL.stream().filter(p -> Boolean.TRUE.equals(flags.get(p.flag)) && !isUsed(p, electrodes)).findFirst();
  }

  private static boolean isUsed(Present present, List<Electrode> electrodes) {
    return electrodes.stream().anyMatch(e -> e.kind().equals(present.electrode) && e.status() != Status.TO_REMOVE);
  }
}
