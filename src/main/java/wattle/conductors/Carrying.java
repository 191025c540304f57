package wattle.conductors;

import java.util.BitSet;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import wattle.model.Branch;
import wattle.model.ConductorUse;
import wattle.model.Leg;
import wattle.model.Role;
import wattle.model.Section;
import wattle.model.SupplySystem;
import wattle.model.Wire;
import wattle.model.Wiring;

/**
 * How many conductors of one run count as carrying current. Grounds and spares do not. A neutral that carries only the
 * difference of its hots does not (NFPA 70 310.15(E)(1), CSA C22.1 4-004); with two legs of a wye it carries about as much
 * as they do, and counts (NFPA 70 310.15(E)(2)). Of the travelers between two switches one carries at a time (common
 * practice).
 */
final class Carrying {
  private Carrying() {}

  static int in(Section section, Branch branch, SupplySystem system) {
    if (section.conductors().isEmpty()) {
      return in(section.wiring(), system);
    }
    int count = 0;
    boolean neutral = false;
    BitSet hots = new BitSet();
    Set<String> travelers = new HashSet<>();
    for (ConductorUse use : section.conductors()) {
      Role role = use.role();
      if (role instanceof Role.Hot hot) {
        hots.set(hot.hot());
        count++;
      } else if (role instanceof Role.SwitchLeg) {
        count++;
      } else if (role instanceof Role.Traveler t) {
        count += travelers.add(t.betweenSwitch() + " " + t.andSwitch()) ? 1 : 0;
      } else if (role instanceof Role.Neutral) {
        neutral = true;
      } else if (!(role instanceof Role.Ground || Role.isApart(role))) {
        throw new AssertionError(role);
      }
    }
    return count + (neutral && !balances(hots, branch, system) ? 1 : 0);
  }

  /** Of a feeder or a service run, whose hots are one for each leg. */
  static int in(Wiring wiring, SupplySystem system) {
    int hots = (int) wiring.wires().stream().filter(w -> w.purpose() == Wire.Purpose.HOT).count();
    boolean counts = wiring.neutral().isPresent() && !balances(hots, system);
    return hots + (counts ? 1 : 0);
  }

  private static boolean balances(BitSet hots, Branch branch, SupplySystem system) {
    Set<Leg> legs = EnumSet.noneOf(Leg.class);
    for (int hot = hots.nextSetBit(0); hot >= 0; hot = hots.nextSetBit(hot + 1)) {
      Optional<Leg> leg = hot < branch.hots().size() ? branch.hots().get(hot).leg() : Optional.empty();
      if (leg.isEmpty() || !legs.add(leg.get())) {
        return false; // on no leg that is known, or on one with another
      }
    }
    return balances(legs.size(), system);
  }

  /** Whether the currents of so many legs can cancel in the neutral. */
  private static boolean balances(int legs, SupplySystem system) {
    return switch (system.kind()) {
      case SPLIT_PHASE -> legs == 2;
      case THREE_PHASE_WYE -> legs == 3;
      case TWO_LEGS_OF_WYE, SINGLE_PHASE, ONE_LEG -> false;
    };
  }
}
