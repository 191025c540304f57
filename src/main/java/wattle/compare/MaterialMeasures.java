package wattle.compare;

import java.util.List;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.materials.Material;
import wattle.materials.Materials;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** The list of what has to be bought. */
final class MaterialMeasures {
  private MaterialMeasures() {}

  static void add(Plan plan, Measured to) {
    Materials materials = plan.figures().materials();
    for (Material item : materials.items()) {
      String words = item.category().word() + ": " + item.what();
      int order = item.category().ordinal();
      Measure measure = item.inMeters()
          ? Measured.ofHouse(Measure.Topic.MATERIALS, order, words, Units.METER, 1)
          : Measured.ofHouse(Measure.Topic.MATERIALS, order, words, Units.ONE, 0);
      to.known(measure, item.derivation().orElseGet(() -> count(item)), "");
    }
    materials.open().forEach(to::open);
  }

  private static Derivation count(Material item) {
    return Derivation.computed(
        item.what(), "", "", new Value.Amount(Quantity.of(item.amount(), Units.ONE)), List.of())
        .remarking("For " + String.join(", ", item.places()) + ".");
  }

  /** None of a material, in a revision whose list does not have it. */
  static Figure none(Measure measure) {
    return new Figure.Known(
        Derivation.computed(measure.words(), "", "", 0, measure.unit()).remarking("The list has none."), "");
  }
}
