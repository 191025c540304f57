package wattle.begin;

import java.util.List;
import java.util.Map;

/**
 * How a system is wired under a code, in new and in old work: cables, protection, and what devices say of themselves.
 *
 * <p>Sizes in mm² and their breakers are common practice: 1.5 mm² on 10 A, 2.5 on 20, 6 on 32, 10 on 40, 16 on 50. Old work has neither
 * arc-fault nor ground-fault protection, and behind fuses cable without a ground; a person puts in what is there.
 */
record Wiring(SupplyChoice system, String code, Work work) {
  private static final Map<String, String> MM2 = Map.of(
      "14/2", "1.5 mm2 Cu TPS", "14/3", "1.5/3 mm2 TPS", "12/2", "2.5 mm2 Cu TPS", "10/2", "6 mm2 Cu TPS", "10/3", "6 mm2 Cu TPS",
      "8/2", "10 mm2 Cu TPS", "8/3", "10 mm2 Cu TPS", "6/3", "16 mm2 Cu TPS");
  /** Trade sizes of raceways in millimeters, as they are marked in Canada. */
  private static final Map<String, String> MILLIMETERS = Map.of(
      "1 in", "27 mm", "1-1/4 in", "35 mm", "1-1/2 in", "41 mm", "2 in", "53 mm", "2-1/2 in", "63 mm", "3 in", "78 mm", "4 in", "103 mm");
  private static final Map<Integer, Integer> IEC_AMPERES = Map.of(15, 10, 30, 32);

  private boolean metric() {
    return system == SupplyChoice.SINGLE_230;
  }

  boolean canadian() {
    return code.startsWith("ca-");
  }

  /** A cable in dry walls by its size and conductors, such as {@code 12/2}. */
  String inside(String size) {
    if (metric()) {
      return MM2.get(size);
    }
    return size + " " + (work == Work.FUSES ? "NM without ground" : canadian() ? "NMD90" : "NM-B");
  }

  /** One in the ground and the wet. */
  String outside(String size) {
    return metric() || work == Work.FUSES ? inside(size) : size + " " + (canadian() ? "NMWU" : "UF-B");
  }

  /** A raceway's trade size, from the one in inches. */
  String tradeSize(String inches) {
    return canadian() ? MILLIMETERS.get(inches) : inches;
  }

  /** Single conductors for raceways. */
  String conductor() {
    return canadian() ? "RW90" : "THWN-2";
  }

  /** The breaker or fuse that is usual where the others have one of so many amperes. */
  int amperes(int usual) {
    return metric() ? IEC_AMPERES.getOrDefault(usual, usual) : usual;
  }

  /** Poles of a way for a load between two hots. */
  int poles(int usual) {
    return Math.min(usual, system.legs());
  }

  /** Whether lines of a box say their legs. Of several dwellings on three phases the legs differ, and slots tell them. */
  boolean statesLegs() {
    return work == Work.FUSES && system != SupplyChoice.THREE_PHASE;
  }

  /** What a way is besides its poles. */
  List<String> protections(List<String> asNew) {
    return switch (work) {
      case FUSES -> List.of("fuse");
      case BREAKERS -> metric() ? List.of("type-b") : List.of();
      case NEW -> metric()
          ? java.util.stream.Stream.concat(java.util.stream.Stream.of("type-b"), asNew.stream().filter("ground-fault"::equals)).toList()
          : asNew;
    };
  }

  /** A device as it is in such work, from what it is in new work on 120 V. */
  String device(String asNew) {
    String device = metric() ? asNew.replace("receptacle 20 A", "receptacle") : asNew;
    if (work.isExisting()) {
      device = device.replace(" tamper-resistant", "").replace(" weather-resistant", "").replace("ground-fault receptacle", "receptacle")
          .replaceFirst(" from-sink .*", "");
    }
    return work == Work.FUSES && !metric() && device.startsWith("receptacle") ? device + " ungrounded" : device;
  }
}
