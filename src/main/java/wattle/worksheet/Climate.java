package wattle.worksheet;

import java.util.ArrayList;
import java.util.List;
import wattle.derivation.Derivation;
import wattle.model.LoadClass;

/**
 * Heating against cooling, and the largest motor, by the standard method. The compressor of a heat pump runs for both; of
 * what does not run together the smaller is left out.
 */
final class Climate {
  static final LoadClass[] HEATING = {
      LoadClass.HEATING, LoadClass.ROOM_HEATING, LoadClass.STORAGE_HEATING, LoadClass.HEAT_PUMP
  };
  static final LoadClass[] COOLING = {LoadClass.COOLING, LoadClass.HEAT_PUMP};

  private final Inputs inputs;
  private final Figures figures;
  private final List<ConnectedLoad> heating;
  private final List<ConnectedLoad> cooling;

  Climate(Inputs inputs, Figures figures) {
    this.inputs = inputs;
    this.figures = figures;
    heating = inputs.all(HEATING);
    cooling = inputs.all(COOLING);
  }

  /** With the quarter of the largest motor that comes on top of each: NFPA 70 220.60 counts a cooling motor at 125 %. */
  private boolean heatingIsLarger() {
    double quarter = figures.limit("largest-motor").si();
    return Sums.total(heating) + quarter * largestOf(heating) >= Sums.total(cooling) + quarter * largestOf(cooling);
  }

  private double largestOf(List<ConnectedLoad> side) {
    return motors(side).counted();
  }

  private List<ConnectedLoad> kept() {
    return heatingIsLarger() ? heating : cooling;
  }

  /** The loads of the larger side by their ratings alone. */
  List<ConnectedLoad> larger() {
    return Sums.total(heating) >= Sums.total(cooling) ? heating : cooling;
  }

  void add(Tally load, Tally neutral) {
    List<ConnectedLoad> kept = kept();
    if (kept.isEmpty()) {
      return;
    }
    Derivation heatFactor = figures.limit("space-heating");
    Derivation coolFactor = figures.limit("cooling");
    String name = heatingIsLarger() ? "heating" : "cooling";
    load.add(name, Sums.ofLoads(name, kept), heatingIsLarger() ? heatFactor : coolFactor, Sums.names(kept));
    load.place(kept, heatingIsLarger() ? heatFactor : coolFactor);
    load.betweenLegs(kept, heatingIsLarger() ? heatFactor : coolFactor);
    List<ConnectedLoad> dropped = (heatingIsLarger() ? cooling : heating).stream().filter(l -> !kept.contains(l)).toList();
    if (!dropped.isEmpty()) {
      String other = heatingIsLarger() ? "cooling" : "heating";
      load.leaveOut(
          other + ", left out", Sums.ofLoads(other, dropped), Sums.names(dropped), "220.60",
          "Does not run together with " + name + ", which is larger.");
    }
    addNeutral(neutral, heatFactor, coolFactor);
  }

  private void addNeutral(Tally neutral, Derivation heatFactor, Derivation coolFactor) {
    List<ConnectedLoad> heat = Sums.onNeutral(heating);
    List<ConnectedLoad> cool = Sums.onNeutral(cooling);
    boolean heats = Sums.total(heat) >= Sums.total(cool);
    List<ConnectedLoad> larger = heats ? heat : cool;
    if (!larger.isEmpty()) {
      String name = heats ? "heating" : "cooling";
      neutral.add(name, Sums.ofLoads(name, larger), heats ? heatFactor : coolFactor, Sums.names(larger));
      neutral.place(larger, heats ? heatFactor : coolFactor);
    }
  }

  /** NFPA 70 220.50 and 430.24: a quarter of the largest motor that counts. */
  void addLargestMotor(Tally load, Tally neutral) {
    motors(kept()).add(figures, load, neutral);
  }

  private LargestMotors motors(List<ConnectedLoad> side) {
    List<ConnectedLoad> motors = new ArrayList<>(inputs.all(LoadClass.MOTOR));
    inputs.all(Appliances.FIXED).stream().filter(ConnectedLoad::motor).forEach(motors::add);
    side.stream()
        .filter(l -> l.loadClass() == LoadClass.COOLING || l.loadClass() == LoadClass.HEAT_PUMP || l.motor())
        .forEach(motors::add);
    return new LargestMotors(inputs, motors);
  }
}
