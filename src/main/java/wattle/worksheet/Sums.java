package wattle.worksheet;

import java.util.ArrayList;
import java.util.List;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** Sums and products of volt-amperes with their derivations. */
final class Sums {
  // A formula of more terms than this is not read by anyone; the inputs still list them all.
  private static final int MOST_TERMS = 16;

  private Sums() {}

  static Derivation sum(String name, List<Derivation> terms) {
    if (terms.size() == 1 && terms.get(0).name().equals(name)) {
      return terms.get(0).named(name, "P");
    }
    List<Derivation> numbered = new ArrayList<>(terms.size());
    StringBuilder formula = new StringBuilder();
    double total = 0;
    for (Derivation term : terms) {
      String symbol = "P_" + (numbered.size() + 1);
      numbered.add(term.named(term.name(), symbol));
      formula.append(formula.length() == 0 ? "" : " + ").append(symbol);
      total += term.si();
    }
    String shown = terms.isEmpty() ? "" : terms.size() > MOST_TERMS ? "sum of " + terms.size() + " loads" : formula.toString();
    return Derivation.computed(
        name, "P", shown, new Value.Amount(voltAmperes(total)), numbered);
  }

  static Derivation ofLoads(String name, List<ConnectedLoad> loads) {
    return sum(name, loads.stream().map(ConnectedLoad::derivation).toList());
  }

  /** A load times a factor. */
  static Derivation times(String name, Derivation load, Derivation factor) {
    return Derivation.computed(
        name, "P", "P × f", load.si() * factor.si(), Units.VOLT_AMPERE, load.named(load.name(), "P"),
        factor.named(factor.name(), "f"));
  }

  /** How many loads there are, leading to each. */
  static Derivation counted(String name, List<ConnectedLoad> loads) {
    return Derivation.computed(
        name, "n", "number of loads", new Value.Amount(Quantity.of(count(loads), Units.ONE)),
        loads.stream().map(ConnectedLoad::derivation).toList());
  }

  static Derivation number(String name, double value) {
    return Derivation.counted(name, "n", value);
  }

  static Quantity voltAmperes(double value) {
    return Quantity.of(value, Units.VOLT_AMPERE);
  }

  static List<String> names(List<ConnectedLoad> loads) {
    return loads.stream().map(ConnectedLoad::name).distinct().toList();
  }

  /** The parts that the neutral takes. */
  static List<ConnectedLoad> onNeutral(List<ConnectedLoad> loads) {
    return loads.stream().filter(ConnectedLoad::neutral).map(ConnectedLoad::neutralPart).toList();
  }

  static double total(List<ConnectedLoad> loads) {
    return loads.stream().mapToDouble(ConnectedLoad::total).sum();
  }

  static int count(List<ConnectedLoad> loads) {
    return loads.stream().mapToInt(ConnectedLoad::count).sum();
  }
}
