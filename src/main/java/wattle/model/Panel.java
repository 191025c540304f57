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
    Status status,
    Origin origin) {
  public Panel {
    legs = List.copyOf(legs);
    breakers = List.copyOf(breakers);
    facts = Map.copyOf(facts);
  }

  /** Label where there is one, else name. */
  public String title() {
    return label.orElse(name);
  }
}
