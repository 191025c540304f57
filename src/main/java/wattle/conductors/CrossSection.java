package wattle.conductors;

import java.util.List;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.finding.Citation;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.quantity.WireSize;

/** The area of metal in a conductor, and the diameter of a solid one. */
final class CrossSection {
  private static final Citation GAUGE = new Citation("ASTM B258", "", false);

  private CrossSection() {}

  static Derivation of(WireSize size, String symbol) {
    String name = "cross-section of " + size;
    double area = size.areaSquareMillimeters();
    if (size.kind() == WireSize.Kind.SQUARE_MILLIMETERS) {
      return Derivation.stated(name, symbol, Quantity.of(area, Units.SQUARE_MILLIMETER));
    }
    return size.kind() == WireSize.Kind.KCMIL
        ? Derivation.computed(name, symbol, "π / 4 × n × (25.4 mm)² / 1000", area, Units.SQUARE_MILLIMETER, number(size))
        : Derivation.computed(name, symbol, "π / 4 × d²", area, Units.SQUARE_MILLIMETER, diameter(size, "d"));
  }

  static Derivation diameter(WireSize size, String symbol) {
    Value value = new Value.Amount(new Quantity(size.diameterMeters(), Units.MILLIMETER));
    String name = "diameter of " + size + ", solid";
    return size.kind() == WireSize.Kind.AWG
        ? Derivation.computed(name, symbol, "0.127 mm × 92^((36 − n) / 39)", value, List.of(number(size))).citing(GAUGE)
        : Derivation.computed(name, symbol, "√(4 × S / π)", value, List.of(of(size, "S")));
  }

  /** The figure in a gauge's or a thousand circular mils' name: 14, 0 for 1/0, −3 for 4/0, 250. */
  private static Derivation number(WireSize size) {
    return Derivation.stated("number of the size", "n", Quantity.of(size.number(), Units.ONE));
  }
}
