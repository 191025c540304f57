package wattle.worksheet;

import java.util.ArrayList;
import java.util.List;
import wattle.derivation.Derivation;
import wattle.model.LoadClass;

/** Heating and cooling by CSA C22.1 62-118 and 8-106 3): of what does not run together the larger. */
final class CanadianClimate {
  private final Inputs inputs;
  private final Figures figures;

  CanadianClimate(Inputs inputs, Figures figures) {
    this.inputs = inputs;
    this.figures = figures;
  }

  void add(Tally load, Tally neutral) {
    List<ConnectedLoad> rooms = inputs.all(LoadClass.ROOM_HEATING);
    List<ConnectedLoad> central = inputs.all(LoadClass.HEATING, LoadClass.STORAGE_HEATING, LoadClass.HEAT_PUMP);
    List<ConnectedLoad> cooling = inputs.all(Climate.COOLING);
    Tally heat = new Tally();
    addHeating(heat, rooms, central);
    double heating = heat.sum();
    double cool = Sums.total(cooling) * figures.limit("cooling").si();
    if (heating == 0 && cool == 0) {
      return;
    }
    boolean heats = heating >= cool;
    if (heats) {
      addHeating(load, rooms, central);
    } else {
      load.add("cooling", Sums.ofLoads("cooling", cooling), figures.limit("cooling"), Sums.names(cooling));
    }
    List<ConnectedLoad> kept = new ArrayList<>(heats ? rooms : cooling);
    if (heats) {
      kept.addAll(central);
    }
    leaveOut(load, heats, kept, rooms, central, cooling);
    List<ConnectedLoad> onNeutral = Sums.onNeutral(kept);
    if (!onNeutral.isEmpty()) {
      String name = heats ? "heating" : "cooling";
      neutral.add(name, Sums.ofLoads(name, onNeutral), figures.limit(heats ? "central-heating" : "cooling"), Sums.names(onNeutral));
    }
  }

  private static void leaveOut(
      Tally load, boolean heats, List<ConnectedLoad> kept, List<ConnectedLoad> rooms, List<ConnectedLoad> central,
      List<ConnectedLoad> cooling) {
    List<ConnectedLoad> dropped = new ArrayList<>(heats ? cooling : rooms);
    if (!heats) {
      dropped.addAll(central);
    }
    dropped.removeAll(kept);
    if (!dropped.isEmpty()) {
      String other = heats ? "cooling" : "heating";
      load.leaveOut(
          other + ", left out", Sums.ofLoads(other, dropped), Sums.names(dropped), "8-106 3)",
          "Assumed not to run together with the larger of the two; check that the controls prevent it.");
    }
  }

  private void addHeating(Tally tally, List<ConnectedLoad> rooms, List<ConnectedLoad> central) {
    if (!rooms.isEmpty()) {
      for (Figures.Tier tier : figures.tiers("room-heating-demand", Sums.ofLoads("room heating", rooms))) {
        tally.add("room heating, " + tier.name(), tier.part(), tier.factor(), Sums.names(rooms));
      }
    }
    if (!central.isEmpty()) {
      tally.add("central heating", Sums.ofLoads("central heating", central), figures.limit("central-heating"), Sums.names(central));
    }
  }
}
