package wattle.faults;

import java.util.Optional;
import java.util.stream.IntStream;
import wattle.quantity.WireSize;

/** The gauge that would let enough current through. */
final class Thicker {
  private Thicker() {}

  /**
   * The thinnest gauge in which the whole run would carry the wished current; absent where none does, or none is thicker.
   *
   * @param amperes that the fault drives now
   * @param near the same fault where the run begins
   */
  static Optional<WireSize> than(Fault fault, double amperes, double wished, Optional<Fault> near) {
    double upstream = near.map(n -> n.hotLoop().magnitude()).orElse(0.0);
    double room = fault.volts() / wished - upstream;
    Optional<WireSize> now = fault.weakest().map(w -> w.wire().size());
    if (!(room > 0) || now.isEmpty()) {
      return Optional.empty();
    }
    double area = now.get().areaSquareMeters() * (fault.volts() / amperes - upstream) / room;
    return IntStream.iterate(14, g -> g >= -3, g -> g - 1)
        .filter(g -> g <= 4 || g % 2 == 0)
        .mapToObj(WireSize::awg)
        .filter(s -> s.areaSquareMeters() >= area && s.compareTo(now.get()) > 0)
        .findFirst();
  }
}
