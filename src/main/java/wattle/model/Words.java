package wattle.model;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A closed list of words of the trade that can stand at one place of the notation.
 *
 * @param what stands there, such as {@code a grounding electrode}
 * @param known the words, in the order in which they are shown
 * @param same other words for some of them, each with the one that it means
 */
public record Words(String what, List<String> known, Map<String, String> same) {
  /** What NFPA 70 250.52(A) and CSA C22.1 10-102 count as one. {@code rods} are two or more that are bonded together. */
  public static final Words ELECTRODES = new Words(
      "a grounding electrode",
      List.of("rod", "rods", "water-pipe", "concrete", "ring", "plate", "pipe", "steel"),
      Map.of("concrete-encased", "concrete", "ground-rod", "rod", "ground-rods", "rods", "ground-ring", "ring", "foundation", "concrete"));

  /** What a branch is for. */
  public static final Words BRANCH_USES = new Words(
      "the use of a branch", List.of("small-appliance", "laundry", "bathroom", "garage", "lighting", "general", "appliance"), Map.of());

  public static final Words PANEL_USES = new Words("the use of a panel", List.of("outbuilding"), Map.of());

  /** Where a run goes. */
  public static final Words RUN_PLACES = new Words(
      "the place of a run",
      List.of("attic", "basement", "ceiling", "concrete", "corrosive", "crawl-space", "damp", "driveway", "dry", "floor", "garage",
          "insulation",
          "outdoors", "roof", "slab", "underground", "wall", "wet", "yard"),
      Map.of("outside", "outdoors", "outdoor", "outdoors", "crawlspace", "crawl-space", "rooftop", "roof"));

  /** Where in its room a device is. */
  public static final Words DEVICE_PLACES = new Words(
      "the place of a device",
      List.of("counter", "island", "peninsula", "wet-bar", "basin", "sink", "tub", "shower", "bench", "desk", "wall", "floor", "ceiling",
          "cabinet", "door", "window", "stair", "front", "back", "side", "soffit", "balcony", "equipment", "washer"),
      Map.of("countertop", "counter", "vanity", "basin", "bathtub", "tub", "workbench", "bench"));

  public static final Words ROOM_KINDS = new Words("the kind of a room", RoomKind.allWords(), Map.of());

  /** What is said of a device beside its kind. */
  public static final Words DEVICE_TRAITS = new Words(
      "a trait of a device",
      List.of("protects", "onward", "weather-resistant", "tamper-resistant", "weatherproof", "continuous", "load-managed",
          "tab-kept", "ground-fault", "arc-fault", "ungrounded", "wet", "damp", "illuminated", "isolated", "locked",
          "standby", "hardwired", "supplementary", "interlocked", "self-contained", "bonded", "linked", "unlinked",
          "dedicated", "disconnect", "fan-rated", "over-heater", "below-counter", "open-lamp", "fluorescent", "cord-connected",
          "readily-accessible",
          "listed-hvac", "non-coincident", "snow-melting", "pull-chain", "automatic", "replacement", "security", "weight-supporting",
          "in-fan", "battery", "thermally-protected", "own-breaker", "simultaneous",
          "code-A", "code-B", "code-C", "code-D", "code-E", "code-F", "code-G", "code-H", "code-J", "code-K", "code-L", "code-M",
          "code-N", "code-P", "code-R", "code-S", "code-T", "code-U", "code-V"),
      Map.of());

  /** What is said of a transfer switch. */
  public static final Words TRANSFER_TRAITS = new Words("a trait of a transfer switch", List.of("automatic", "load-managed"), Map.of());

  public static final Words BOX_TRAITS = new Words(
      "a trait of a box",
      List.of("metal", "plastic", "clamps", "stud", "hickey", "terminal-block", "round", "square", "octagon", "old-work", "weatherproof",
          "bonded",
          "extension", "later", "accessible", "concealed", "covered", "uncovered", "boxless", "soldered", "masonry", "FS", "FD", "uncut",
          "looped"),
      Map.of());

  /** Raceways that conductors are pulled into. */
  public static final Words RACEWAYS = new Words(
      "a kind of raceway",
      List.of("EMT", "IMC", "RMC", "FMC", "LFMC", "PVC", "PVC-80", "ENT", "HDPE", "LFNC", "RTRC", "wireway"),
      Map.of("GRC", "RMC", "RNC", "PVC", "PVC-40", "PVC", "LFNC-B", "LFNC", "conduit", "RMC"));

  public Words {
    known = List.copyOf(known);
    same = Map.copyOf(same);
  }

  /** The word of the list that a written one means; absent where it means none. */
  public Optional<String> meant(String written) {
    return known.contains(written) ? Optional.of(written) : Optional.ofNullable(same.get(written));
  }
}
