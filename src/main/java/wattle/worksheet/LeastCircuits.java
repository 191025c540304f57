package wattle.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.model.SupplySystem;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * How many branch circuits a dwelling has at least by its floor area, and how many the plan has: NFPA 70 210.11(A) to (C), as in example
 * D1(a) of Annex D, where 4500 VA are 37.5 A and take three circuits of 15 A or two of 20 A.
 *
 * @param lighting amperes of the general lighting at the voltage to the neutral
 * @param planned amperes of the circuits for lights and general receptacles in the plan; absent where it states no rating for one
 * @param plannedCircuits how many those are
 * @param smallAppliance in the plan
 * @param smallApplianceLeast by the code
 * @param laundry in the plan
 * @param laundryLeast by the code
 */
public record LeastCircuits(
    Derivation lighting, Optional<Double> planned, int plannedCircuits, int smallAppliance, int smallApplianceLeast, int laundry,
    int laundryLeast) {
  /** Absent where the code counts no lighting by floor area, or not one whole dwelling is served. */
  static Optional<LeastCircuits> of(Inputs inputs, Figures figures, General general) {
    if (inputs.scope() == Inputs.Scope.PART || inputs.dwellings().size() != 1 || inputs.dwellings().get(0).alike() > 1
        || inputs.dwellings().get(0).floorArea().isEmpty() || figures.maybe("general-lighting").isEmpty()) {
      return Optional.empty();
    }
    DwellingUnit unit = inputs.dwellings().get(0);
    SupplySystem system = inputs.system();
    Derivation load = new GeneralLoad(inputs, figures).lightingAlone();
    Derivation amperes = Derivation.computed(
        "general lighting at " + Quantity.plain(system.legToNeutralVolts(), 4) + " V", "I", "P / U_n",
        load.si() / system.legToNeutralVolts(),
        Units.AMPERE, load.named(load.name(), "P"),
        Derivation.stated("voltage to the neutral", "U_n", Quantity.of(system.legToNeutralVolts(), Units.VOLT)));
    return Optional.of(
        new LeastCircuits(
            amperes, general.amperes(), general.circuits(), unit.smallAppliance().count(),
            (int) figures.limit("small-appliance-circuits").si(),
            unit.laundry().count(), (int) figures.limit("laundry-circuits").si()));
  }

  /** Circuits for lights and general receptacles. */
  record General(int circuits, Optional<Double> amperes) {}

  /** Circuits of so many amperes that the general lighting takes at least. */
  public int least(int rating) {
    return (int) Math.ceil(lighting.si() / rating - 1e-9);
  }

  /** As lines: what the code asks for at least, and what the plan has. */
  public List<String> lines() {
    List<String> lines = new ArrayList<>();
    lines.add(
        "Least number of circuits, 210.11: general lighting " + Quantity.plain(Math.round(10 * lighting.si()) / 10.0, 4) + " A, "
            + least(15) + " of 15 A or " + least(20) + " of 20 A; the plan has " + plannedCircuits
            + planned.map(a -> ", " + Quantity.plain(a, 4) + " A in all" + (a < lighting.si() - 0.5 ? ": fewer than needed" : ""))
                .orElse("")
            + ".");
    lines.add(
        "Small-appliance circuits, 210.11(C)(1): " + smallApplianceLeast + " at least; the plan has " + smallAppliance
            + (smallAppliance < smallApplianceLeast ? ": fewer than needed" : "") + ". Laundry circuits, 210.11(C)(2): " + laundryLeast
            + " at least; the plan has " + laundry + (laundry < laundryLeast ? ": fewer than needed" : "") + ".");
    return lines;
  }
}
