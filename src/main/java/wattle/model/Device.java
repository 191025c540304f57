package wattle.model;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.quantity.Quantity;

/**
 * A device in a box.
 *
 * @param name room and name, as in {@code kitchen.c1}
 * @param traits words such as {@code weather-resistant} or {@code protects-onward}
 * @param loads what it draws, part by part; empty where it draws nothing of its own
 * @param controls names of the lights a switch works
 * @param controlledHalves the halves that a switch works where it does not work the whole, as in {@code living.s1.upper}
 * @param location such as {@code counter}; absent where not said
 * @param facts named figures, such as {@code minimum-circuit}
 */
public record Device(
    String name,
    Optional<String> label,
    DeviceKind kind,
    String room,
    String box,
    Set<String> traits,
    List<Load> loads,
    List<String> controls,
    List<String> controlledHalves,
    Optional<String> location,
    Map<String, Quantity> facts,
    Terminals terminals,
    Status status,
    Origin origin) {
  public Device {
    traits = Set.copyOf(traits);
    loads = List.copyOf(loads);
    controls = List.copyOf(controls);
    controlledHalves = List.copyOf(controlledHalves);
    facts = Map.copyOf(facts);
  }

  /** All that it draws at once, in volt-amperes. */
  public double voltAmperes() {
    return loads.size() == 1 ? loads.get(0).voltAmperes() : loads.stream().mapToDouble(Load::voltAmperes).sum();
  }

  /** All that its nameplate says, at the voltage that it is rated for. */
  public double nameplateVoltAmperes() {
    return loads.stream().mapToDouble(Load::nameplateVoltAmperes).sum();
  }

  /** The voltage that it is rated for; absent where the plan does not state one, and it is rated for what it is connected to. */
  public Optional<Quantity> ratedVoltage() {
    return Optional.ofNullable(facts.get("voltage"));
  }

  /** Label where there is one, else name. */
  public String title() {
    return label.orElse(name);
  }
}
