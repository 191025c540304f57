package wattle.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.model.LoadClass;

/**
 * An existing dwelling to which load is added, by NFPA 70 220.83: with new heating or cooling, the larger of the two counts
 * in full; without, all loads are taken together.
 */
final class ExistingMethod implements Calculation {
  @Override
  public List<Objection> objections(Inputs inputs, Figures figures) {
    List<Objection> objections = new ArrayList<>(Conditions.single(inputs));
    objections.addAll(Conditions.whole(inputs));
    objections.addAll(Conditions.standing(inputs));
    objections.addAll(Conditions.threeWires(inputs));
    return objections;
  }

  @Override
  public Worksheet calculate(Method method, Inputs inputs, Figures figures) {
    Tally load = new Tally();
    List<ConnectedLoad> rooms = inputs.all(LoadClass.ROOM_HEATING);
    boolean manyRooms = Sums.count(rooms) >= figures.limit("rooms-many").si();
    Climate climate = new Climate(inputs, figures);
    boolean more = climateAdded(inputs);
    List<ConnectedLoad> kept = more && manyRooms
        ? climate.larger().stream().filter(l -> l.loadClass() != LoadClass.ROOM_HEATING).toList()
        : climate.larger();
    Derivation general = general(inputs, figures, load, more ? (manyRooms ? rooms : List.of()) : kept);
    load.list("subtotal, all loads", general, List.of(), "220.83");
    for (Figures.Tier tier : figures.tiers("existing-demand", general)) {
      load.add("all loads, " + tier.name(), tier.part(), tier.factor(), OptionalGeneral.devices(inputs, figures));
    }
    if (more && !kept.isEmpty()) {
      Derivation connected = Sums.ofLoads("heating or cooling", kept);
      load.add("heating or cooling, the larger", connected, figures.limit("space-heating"), Sums.names(kept));
    }
    new FarmLoads(inputs, figures).add(load, new Tally());
    return Capacity.of(
        method, inputs, figures, load, StandardMethod.neutral(inputs, figures), Optional.empty());
  }

  private static boolean climateAdded(Inputs inputs) {
    List<ConnectedLoad> all = new ArrayList<>(inputs.all(Climate.HEATING));
    all.addAll(inputs.all(LoadClass.COOLING));
    return all.stream().anyMatch(ConnectedLoad::added);
  }

  private static Derivation general(Inputs inputs, Figures figures, Tally load, List<ConnectedLoad> climate) {
    Derivation general = OptionalGeneral.list(inputs, figures, load, "220.83");
    if (climate.isEmpty()) {
      return general;
    }
    Derivation connected = Sums.ofLoads("heating or cooling, the larger", climate);
    load.list("heating or cooling, the larger", connected, Sums.names(climate), "220.83");
    return Sums.sum("all loads", List.of(general, connected));
  }
}
