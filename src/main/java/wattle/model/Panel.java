package wattle.model;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.quantity.Quantity;

/**
 * A panelboard or fuse box.
 *
 * @param system the supply that it hangs on
 * @param legs the legs on its bus, in the order in which the rows take them
 * @param feeder the wires from its supply; absent where it sits at the service and no run was written
 * @param slotCount absent where the plan does not say
 * @param bonded whether neutral and ground are joined here
 * @param main absent where the panel has none
 * @param breakers in the order written
 * @param flags what is said to be so, or not to be so, such as {@code over-steps}
 * @param room name of the room that it is in; absent where not said
 * @param terminals what all its lugs and breakers are marked for
 * @param electrodes at the building that it stands in, where that is another one than the service
 */
public record Panel(
    String name,
    Optional<String> label,
    PanelSupply supply,
    SupplySystem system,
    List<Leg> legs,
    Optional<Stretch> feeder,
    Optional<Quantity> busRating,
    Optional<Integer> slotCount,
    SlotOrder order,
    boolean bonded,
    Optional<MainDevice> main,
    List<Breaker> breakers,
    Optional<String> kind,
    Map<String, Quantity> facts,
    Map<String, Boolean> flags,
    Optional<String> room,
    Terminals terminals,
    List<Electrode> electrodes,
    Status status,
    Origin origin) {
  /** No panel has more slots; one whose number is not stated is taken to have as many. */
  public static final int MOST_SLOTS = 400;

  public Panel {
    legs = List.copyOf(legs);
    electrodes = List.copyOf(electrodes);
    breakers = List.copyOf(breakers);
    facts = Map.copyOf(facts);
    flags = Map.copyOf(flags);
  }

  /** What the terminals of one of its breakers are marked for, the panel's own marking taken in. */
  public Terminals terminalsOf(Breaker breaker) {
    return breaker.terminals().within(terminals);
  }

  /** What the terminals of its feeder are marked for. */
  public Terminals incoming() {
    return main.map(m -> m.terminals().within(terminals)).orElse(terminals);
  }

  /** The same panel fed by another run, neutral and ground kept apart in it. */
  public Panel isolated(Stretch run) {
    return new Panel(name, label, supply, system, legs, Optional.of(run), busRating, slotCount, order, false, main, breakers, kind, facts,
        flags, room, terminals, electrodes, status, origin);
  }

  /** Label where there is one, else name. */
  public String title() {
    return label.orElse(name);
  }
}
